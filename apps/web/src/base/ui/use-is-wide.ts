'use client'

import { useSyncExternalStore } from 'react'

/** Room for the navigation, a list and a panel beside each other; the same number stands in the style sheets. */
const wide = '(min-width: 80rem)'

const subscribe = (listener: () => void) => {
  const query = window.matchMedia(wide)
  query.addEventListener('change', listener)
  return () => query.removeEventListener('change', listener)
}

/** Whether a panel fits beside the list. */
export const useIsWide = (): boolean =>
  useSyncExternalStore(
    subscribe,
    () => window.matchMedia(wide).matches,
    () => false,
  )
