import type { Id } from '@fryward/shared'
import { ApiProblem } from '@/base/api/problem.ts'
import type { Answered } from './tabs.ts'

type Waiter = {
  promise: Promise<unknown>
  resolve: (answer: unknown) => void
  reject: (problem: ApiProblem) => void
  onProgress: (share: number) => void
  isLeft: boolean
}

function makeWaiter(onProgress: (share: number) => void): Waiter {
  let resolve: Waiter['resolve'] = () => {}
  let reject: Waiter['reject'] = () => {}
  const promise = new Promise<unknown>((yes, no) => {
    resolve = yes
    reject = no
  })
  return { promise, resolve, reject, onProgress, isLeft: false }
}

/** Whoever waits on this page for the answer to a command. */
export function makeWaiters() {
  const waiters = new Map<Id, Waiter>()
  return {
    /** Undefined where nobody waits yet. */
    promiseOf: (id: Id) => waiters.get(id)?.promise,
    add: (id: Id, onProgress: (share: number) => void): Promise<unknown> => {
      const waiter = makeWaiter(onProgress)
      waiters.set(id, waiter)
      return waiter.promise
    },
    forget: (id: Id) => waiters.delete(id),
    /** They have gone from the screen: a refusal is not theirs to mend any more. */
    leave: (id: Id) => {
      const waiter = waiters.get(id)
      if (waiter) waiter.isLeft = true
    },
    isOnScreen: (id: Id): boolean => waiters.get(id)?.isLeft === false,
    tellProgress: (id: Id, share: number) => waiters.get(id)?.onProgress(share),
    settle: ({ id, answer, problem }: Answered) => {
      const waiter = waiters.get(id)
      waiters.delete(id)
      if (problem) waiter?.reject(new ApiProblem(problem))
      else waiter?.resolve(answer)
    },
  }
}
