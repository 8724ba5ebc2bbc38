'use client'

import { useEffect, useSyncExternalStore } from 'react'

let going = 0
const listeners = new Set<() => void>()

function add(by: 1 | -1): void {
  going += by
  for (const tell of listeners) tell()
}

function listen(tell: () => void): () => void {
  listeners.add(tell)
  return () => listeners.delete(tell)
}

/** Counts a link that was tapped and whose page has not come yet. */
export function useMarkGoing(isGoing: boolean): void {
  useEffect(() => {
    if (!isGoing) return
    add(1)
    return () => add(-1)
  }, [isGoing])
}

/** Whether a page that was tapped is still to come. */
export const useIsGoing = (): boolean =>
  useSyncExternalStore(
    listen,
    () => going > 0,
    () => false,
  )
