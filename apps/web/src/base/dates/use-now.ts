'use client'

import { useEffect, useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'

const tickMs = 20_000

/** The server's clock. Ticks every twenty seconds so that "late" turns late by itself, and once for each new `answer`. */
export function useServerNow(answer?: unknown): Date {
  const [now, setNow] = useState(serverNow)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new answer may have set the clock
  useEffect(() => {
    const tick = () => setNow(serverNow())
    tick()
    const timer = window.setInterval(tick, tickMs)
    return () => window.clearInterval(timer)
  }, [answer])
  return now
}
