import { type Task, TaskSchema } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { ApiProblem } from '@/base/api/problem.ts'
import { signOffAll } from './sign-off-all.ts'

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const makeTask = (n: number, part: Partial<Task> = {}): Task =>
  TaskSchema.parse({
    ...{ verb: 'feed', title: { text: 'Feed', quantities: {} }, amount: { value: n, unit: 'mL' }, amountOf: null },
    ...{ steps: [], cautions: [], fields: [], id: id(n), key: `k${n}`, ruleId: 'feed', ruleTitle: 'Feed' },
    ...{ subject: { id: id(100), kind: 'culture', name: 'R1' }, station: 'live_food', onDate: '2026-11-25' },
    ...{ roundId: 'morning', ordinal: 0, state: 'open', isForStandIn: true, reason: null, closedByName: null },
    ...{ dueAt: '2026-11-25T07:00:00Z', lateAt: '2026-11-25T09:00:00Z', closesAt: '2026-11-26T07:00:00Z' },
    ...{ closedAt: null, signOffs: [], lastValues: {}, changes: [], version: 1 },
    ...part,
  })
const problem = (code: 'offline' | 'already_done' | 'not_allowed') =>
  new ApiProblem({ code, detail: 'No answer.', status: 0 })

/** A server that holds these tasks and keeps what it was sent. */
function serve(current: Task[], answer: (task: Task) => void = () => {}) {
  const sent: string[] = []
  return {
    sent,
    given: (tasks: Task[]) => ({
      ...{ tasks, stop: 'Live food' },
      showTask: () => {},
      fetchTask: async (taskId: string) => {
        const found = current.find((task) => task.id === taskId)
        if (!found) throw new Error(`no task ${taskId}`)
        return found
      },
      signOff: async (task: Task) => {
        sent.push(task.id)
        answer(task)
      },
    }),
  }
}

describe('several sign-offs with one tap', () => {
  const tasks = [makeTask(1), makeTask(2), makeTask(3)]

  it('go out in the order of the list', async () => {
    const server = serve(tasks)
    const { done, said } = await signOffAll(server.given(tasks))
    expect(server.sent).toEqual([id(1), id(2), id(3)])
    expect(done).toEqual(tasks)
    expect(said).toBe('3 as planned: Live food')
  })

  it('leave open what has another amount by now, and what is no longer open', async () => {
    const server = serve([
      makeTask(1),
      makeTask(2, { amount: { value: 2.4, unit: 'mL' } }),
      makeTask(3, { state: 'done' }),
    ])
    const { done, said } = await signOffAll(server.given(tasks))
    expect(done.map((task) => task.id)).toEqual([id(1)])
    expect(server.sent).toHaveLength(1)
    expect(said).toBe('1 of 3 as planned: Live food. 1 has a new amount, look again. 1 was no longer open')
  })

  it('end where one is refused, and say why', async () => {
    const server = serve(tasks, (task) => {
      if (task.id === id(2)) throw problem('not_allowed')
    })
    const { done, said } = await signOffAll(server.given(tasks))
    expect(done.map((task) => task.id)).toEqual([id(1)])
    expect(server.sent).toEqual([id(1), id(2)])
    expect(said).toBe('1 of 3 as planned: Live food. No answer.')
  })

  it('are all handed on at once where nobody can be asked, to wait for the network together', async () => {
    const server = serve(tasks)
    const given = {
      ...server.given(tasks),
      fetchTask: async () => {
        throw problem('offline')
      },
    }
    let isBack = () => {}
    const back = new Promise<void>((resolve) => {
      isBack = resolve
    })
    const waiting = signOffAll({
      ...given,
      signOff: async (task) => {
        await given.signOff(task)
        await back
      },
    })
    await expect.poll(() => server.sent).toEqual([id(1), id(2), id(3)])
    isBack()
    expect((await waiting).said).toBe('3 as planned: Live food')
  })

  it('go on past one that somebody else was faster with', async () => {
    const server = serve(tasks, (task) => {
      if (task.id === id(1)) throw problem('already_done')
    })
    const { done } = await signOffAll(server.given(tasks))
    expect(done.map((task) => task.id)).toEqual([id(2), id(3)])
  })
})
