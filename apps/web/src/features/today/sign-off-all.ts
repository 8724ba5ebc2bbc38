import type { Id, Task } from '@fryward/shared'
import { isApiProblem, sentenceOf } from '../../api/problem.ts'
import { makeRequestKey } from '../../api/request-key.ts'
import { type Outcome, sayOutcomes } from './say-outcomes.ts'

export type SignOffAll = {
  tasks: Task[]
  stop: string
  /** A key is kept until an answer came, so that tapping again after a lost answer books once. */
  keys: Map<Id, string>
  fetchTask: (taskId: Id) => Promise<Task>
  showTask: (task: Task) => void
  signOff: (task: Task, requestKey: string) => Promise<unknown>
}

async function isAsShown(task: Task, { fetchTask, showTask }: SignOffAll): Promise<Outcome> {
  const current = await fetchTask(task.id)
  const isSame = JSON.stringify(current.amount) === JSON.stringify(task.amount)
  if (current.state === 'open' && isSame) return 'done'
  showTask(current)
  return current.state === 'open' ? 'changed' : 'gone'
}

async function signOne(task: Task, given: SignOffAll): Promise<Outcome> {
  const { keys, signOff } = given
  const sent = keys.get(task.id)
  const asShown = sent ? 'done' : await isAsShown(task, given)
  if (asShown !== 'done') return asShown
  const requestKey = sent ?? makeRequestKey()
  keys.set(task.id, requestKey)
  try {
    await signOff(task, requestKey)
  } catch (error) {
    const isAnswer = isApiProblem(error) && error.code !== 'offline'
    if (isAnswer) keys.delete(task.id)
    if (isAnswer && error.code === 'already_done') return 'gone'
    throw error
  }
  keys.delete(task.id)
  return 'done'
}

/**
 * Signs tasks off one after the other in their order, each as it stood on the screen: one whose amount has moved since
 * (the sign-off before it may have done that) is left open. The first failure ends it.
 * @returns those that were booked, and what to say of all of them.
 */
export async function signOffAll(given: SignOffAll): Promise<{ done: Task[]; said: string }> {
  const { tasks, stop } = given
  const outcomes: Outcome[] = []
  let problem: string | undefined
  try {
    for (const task of tasks) outcomes.push(await signOne(task, given))
  } catch (error) {
    problem = sentenceOf(error)
  }
  const done = tasks.filter((_, i) => outcomes[i] === 'done')
  return { done, said: sayOutcomes({ outcomes, all: tasks.length, stop, problem }) }
}
