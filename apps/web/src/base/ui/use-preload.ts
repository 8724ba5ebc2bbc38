'use client'

import { useEffect } from 'react'

/** Long enough for the page to be on the screen, short enough to beat a thumb. */
const afterMs = 1_500

/** Fetches a script that is needed later, before the network may be gone. `load` must be the same function each time. */
export function usePreload(load: () => Promise<unknown>): void {
  useEffect(() => {
    // Without network it does not come; using it asks for it again and says so.
    const timer = window.setTimeout(() => load().catch(() => undefined), afterMs)
    return () => window.clearTimeout(timer)
  }, [load])
}
