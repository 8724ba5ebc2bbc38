'use client'

import { useEffect, useState } from 'react'

/**
 * The server's clock, carried on by this device's: what the server said plus the time since it said so. Ticks every
 * twenty seconds so that "late" turns late by itself.
 */
export function useServerNow(said: { now: string; receivedAtMs: number } | undefined): Date {
  const [deviceNowMs, setDeviceNowMs] = useState(() => Date.now())
  useEffect(() => {
    const tick = () => setDeviceNowMs(Date.now())
    tick()
    const timer = window.setInterval(tick, 20_000)
    return () => window.clearInterval(timer)
  }, [])
  if (said === undefined) return new Date(deviceNowMs)
  return new Date(new Date(said.now).getTime() + Math.max(0, deviceNowMs - said.receivedAtMs))
}
