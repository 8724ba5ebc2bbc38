import type { TaskDraft } from '@fryward/husbandry'
import type { JsonRouteId, ResponseOf, Task } from '@fryward/shared'
import { type Clock, type Person, roomSetup } from '../support/world.ts'
import { bottleCellsPerMl } from './nature.ts'
import { RoomAlone } from './room-alone.ts'
import type { Service } from './service.ts'

type Asked = { params?: Record<string, string | undefined>; body?: unknown }
type Answer = (room: RoomAlone, asked: Asked & { now: string }) => unknown

const owner: Person = { userId: 'owner', name: 'The owner', email: '', cookie: '' }

/**
 * The same requests answered by the rules alone, without server or database: a tenth of the time a day, so that years of
 * rooms are lived through. `live.test.ts` holds that both say the same.
 */
export function rulesAlone(startsAt: string): Service {
  const clock = clockAt(startsAt)
  const rooms: RoomAlone[] = []
  const ask = (id: JsonRouteId, { params, body }: Asked): unknown => {
    const room = rooms[Number(params?.roomId)]
    const answer = room && answers[id]?.(room, { params, body, now: clock.now() })
    if (answer === undefined) throw new Error(`The rules alone do not answer ${id}`)
    return answer
  }
  const ok: Service['ok'] = async <K extends JsonRouteId>(_person: Person | null, id: K, parts: Asked = {}) =>
    ask(id, parts) as ResponseOf<K>
  const call: Service['call'] = async <K extends JsonRouteId>(_person: Person | null, id: K, parts: Asked = {}) => {
    const body = ask(id, parts)
    const fields = id === 'signOffTask' ? (body as { path: string; message: string }[]) : []
    const problem = fields.length === 0 ? null : { ...refusal, fields }
    return { status: problem ? 422 : 200, body: body as ResponseOf<K>, problem, headers: {} }
  }
  return {
    ...{ ok, call, clock },
    open: async (setup) => {
      rooms.push(new RoomAlone({ ...plainRoom, ...setup }, clock.now()))
      return { owner, room: { id: String(rooms.length - 1), revision: 1 } }
    },
    tick: async () => undefined,
    planFood: async ({ roomId }) => rooms[Number(roomId)]?.planFood(clock.now()),
  }
}

const refusal = {
  ...{ type: 'about:blank', title: 'Refused', status: 422, code: 'invalid_input' as const },
  detail: 'Some values cannot be kept; see the fields.',
}

const plainRoom = { ...roomSetup, concentrate: { name: 'Green bottle', cellsPerMl: bottleCellsPerMl } }

/** What each request of a keeper comes to; the fields that keepers read, and no others. */
const answers: { [K in JsonRouteId]?: Answer } = {
  getDay: (room, { params, now }) => ({ tasks: room.list(String(params?.date), now).map(toTask) }),
  signOffTask: (room, { params, body, now }) =>
    room.signOff(String(params?.taskId), (body as { values: Record<string, unknown> }).values, now),
  listFacts: (room) => ({ facts: room.news() }),
  listTanks: ({ book }) => book.snapshot.tanks,
  listCultures: ({ book }) => book.snapshot.cultures.map((culture) => ({ ...culture, version: 1, endedAt: null })),
  listClutches: ({ book }) => book.snapshot.clutches,
  listFeedLinks: ({ book }) => book.snapshot.feedLinks,
  listLarvalBatches: ({ book }) =>
    book.snapshot.batches.map((batch) => ({ ...batch, version: 1, endedAt: book.ended.has(batch.id) ? '' : null })),
  listJuvenileGroups: ({ book }) => book.snapshot.groups,
  createPair: ({ book }, { body }) => {
    book.revision += 1
    return book.pair(body as { name: string; species: string; tankId: string })
  },
  createFeedLink: ({ book }, { body }) => {
    const { batchId, cultureId, fromOn } = body as { batchId: string; cultureId: string; fromOn: string }
    book.revision += 1
    book.link(batchId, cultureId, fromOn)
    return {}
  },
  changeTank: ({ book }, { params, body }) => {
    book.revision += 1
    const { tanks } = book.snapshot
    const at = tanks.findIndex(({ id }) => id === params?.tankId)
    tanks[at] = { ...tanks[at]!, hasFilter: (body as { hasFilter: boolean }).hasFilter }
    return tanks[at]
  },
  changeCulture: ({ book }, { params, body }) => {
    book.revision += 1
    const { cultures } = book.snapshot
    const at = cultures.findIndex(({ id }) => id === params?.cultureId)
    cultures[at] = { ...cultures[at]!, concentrateId: (body as { concentrateId: null }).concentrateId }
    return cultures[at]
  },
  endLarvalBatch: ({ book }, { params }) => {
    book.revision += 1
    book.end(String(params?.batchId))
    return {}
  },
}

function toTask({ draft, isOpen }: { draft: TaskDraft; isOpen: boolean }): Partial<Task> {
  const { content, key, subjectId, subjectKind, subjectName, ruleId, station, roundId, ordinal, dueAt } = draft
  const subject = { id: subjectId, kind: subjectKind, name: subjectName }
  const { because: _because, ...said } = content
  return { ...said, id: key, key, ruleId, subject, station, roundId, ordinal, dueAt, state: isOpen ? 'open' : 'done' }
}

function clockAt(startsAt: string): Clock {
  let now = startsAt
  return {
    now: () => now,
    set: (to) => {
      now = new Date(to).toISOString()
    },
    advanceMinutes: (minutes) => {
      now = new Date(Date.parse(now) + minutes * 60_000).toISOString()
    },
  }
}
