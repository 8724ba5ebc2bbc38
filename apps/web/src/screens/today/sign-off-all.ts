import type { Id, Task } from '@fryward/shared'
import { isApiProblem, sentenceOf } from '@/base/api/problem.ts'
import { type Outcome, sayOutcomes } from './say-outcomes.ts'

export type SignOffAll = {
  tasks: Task[]
  stop: string
  fetchTask: (taskId: Id) => Promise<Task>
  showTask: (task: Task) => void
  /** Resolves once it is booked, however long that takes. */
  signOff: (task: Task) => Promise<unknown>
}

const isOffline = (error: unknown) => isApiProblem(error) && error.code === 'offline'

/** Whether a task still is what the screen says; undefined while nobody can be asked. */
async function findOut(task: Task, { fetchTask, showTask }: SignOffAll): Promise<Outcome | undefined> {
  let current: Task
  try {
    current = await fetchTask(task.id)
  } catch (error) {
    if (isOffline(error)) return undefined
    throw error
  }
  const isSame = JSON.stringify(current.amount) === JSON.stringify(task.amount)
  if (current.state === 'open' && isSame) return 'done'
  showTask(current)
  return current.state === 'open' ? 'changed' : 'gone'
}

async function send(task: Task, { signOff }: SignOffAll): Promise<Outcome> {
  try {
    await signOff(task)
  } catch (error) {
    if (isApiProblem(error) && error.code === 'already_done') return 'gone'
    throw error
  }
  return 'done'
}

/**
 * Signs tasks off one after the other in their order, each as it stood on the screen: one whose amount has moved since
 * (the sign-off before it may have done that) is left open, and the first failure ends it. Without a network all of them
 * are handed on at once, to wait for it together.
 * @returns those that were booked, and what to say of all of them.
 */
export async function signOffAll(given: SignOffAll): Promise<{ done: Task[]; said: string }> {
  const { tasks, stop } = given
  const sent: Promise<Outcome>[] = []
  let problem: string | undefined
  let isCut = false
  try {
    for (const task of tasks) {
      const found: Outcome | undefined = isCut ? 'done' : await findOut(task, given)
      isCut ||= found === undefined
      const outcome = found === 'changed' || found === 'gone' ? Promise.resolve(found) : send(task, given)
      sent.push(outcome)
      if (!isCut) await outcome
    }
    await Promise.all(sent)
  } catch (error) {
    problem = sentenceOf(error)
  }
  const settled = await Promise.allSettled(sent)
  const outcomes = settled.map((one) => (one.status === 'fulfilled' ? one.value : undefined))
  const done = tasks.filter((_, i) => outcomes[i] === 'done')
  return { done, said: sayOutcomes({ outcomes, all: tasks.length, stop, problem }) }
}
