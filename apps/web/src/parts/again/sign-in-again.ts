'use client'

import { useSyncExternalStore } from 'react'
import { call } from '@/base/api/call.ts'
import { isApiProblem } from '@/base/api/problem.ts'

type Waiting = { goOn: () => void; giveUp: () => void }

let waiting: Waiting | null = null
const listeners = new Set<() => void>()
const wait = (next: Waiting | null) => {
  waiting = next
  for (const listener of listeners) listener()
}
const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => void listeners.delete(listener)
}

/** Ends what waits for a password, as if it had not been typed. */
export const giveUpWaiting = (): void => waiting?.giveUp()

/** What waits for a password to be typed again; null when nothing does. */
export const useWaiting = (): Waiting | null =>
  useSyncExternalStore(
    subscribe,
    () => waiting,
    () => null,
  )

/**
 * Does what was meant, and where the server wants to see the password first, asks for it and does it then.
 * A page that calls this shows a `SignInAgain`.
 * @throws what the work threw, also when nobody typed the password.
 */
export async function sureItIsMe<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (problem) {
    if (!isApiProblem(problem) || problem.code !== 'sign_in_again') throw problem
    await new Promise<void>((resolve, reject) => {
      const end = (how: () => void) => () => {
        wait(null)
        how()
      }
      // One thing at a time: what waited before is given up, and says so where it was meant.
      giveUpWaiting()
      wait({ goOn: end(resolve), giveUp: end(() => reject(problem)) })
    })
    return work()
  }
}

/** For what the browser fetches by itself: whether the server would hand it over. */
export const askWhetherItIsMe = () => call('getSignedInAgain')
