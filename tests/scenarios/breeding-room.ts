import { tick } from '@fryward/scheduler'
import type { BodyInputOf, Day, Task } from '@fryward/shared'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

/** A room over the public API, lived in by one owner: facts go in, the day's list comes out. */
export type BreedingRoom = {
  world: World
  owner: Person
  roomId: string
  /** Today's list, opened by the clock as it is in life. */
  today: () => Promise<Day>
  tasks: (ruleId: string, subjectId?: string) => Promise<Task[]>
  signOff: (task: Task, values?: Record<string, unknown>, confirmed?: string[]) => Promise<Task>
  record: (fact: BodyInputOf<'recordFact'>) => Promise<unknown>
  count: (cultureId: string, perMl: number) => Promise<unknown>
}

export async function openBreedingRoom(
  setup: Partial<BodyInputOf<'createRoom'>>,
  { at = '2026-03-10T07:00:00.000Z' } = {},
): Promise<BreedingRoom> {
  const world = await openWorld({ at })
  const { owner, room } = await openRoom(world, { timeZone: 'UTC', ...setup })
  const params = { roomId: room.id }
  const log = { info: () => undefined, warn: (detail: object) => Promise.reject(new Error(JSON.stringify(detail))) }
  const today = async () => {
    await tick({ database: world.database, now: world.clock.now, log })
    return world.ok(owner, 'getDay', { params: { ...params, date: world.clock.now().slice(0, 10) } })
  }
  const record: BreedingRoom['record'] = (body) => world.ok(owner, 'recordFact', { params, body })
  return {
    world,
    owner,
    roomId: room.id,
    today,
    tasks: async (ruleId, subjectId) =>
      (await today()).tasks.filter(
        (task) => task.ruleId === ruleId && task.state === 'open' && (!subjectId || task.subject.id === subjectId),
      ),
    signOff: (task, values = {}, confirmed = []) =>
      world.ok(owner, 'signOffTask', { params: { ...params, taskId: task.id }, body: { values, confirmed } }),
    record,
    count: (cultureId, perMl) =>
      record({
        kind: 'count',
        subjectId: cultureId,
        data: { of: 'culture', animals: [perMl, perMl, perMl], volumeMl: 1 },
      }),
  }
}
