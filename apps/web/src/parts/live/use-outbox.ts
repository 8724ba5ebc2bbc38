'use client'

import { type ComponentType, useEffect, useRef, useState } from 'react'
import { loadOutbox } from '@/base/outbox/load-outbox.ts'
import type { SignedIn } from '@/base/room/person-context.tsx'
import { untilLoaded } from '@/base/ui/until-loaded.ts'

/** Long enough for the page to be on the screen; what is tapped before is sent at once. */
const afterMs = 1_500
const loadKeptHere = () => import('./KeptHere.tsx')

async function startOutbox(person: SignedIn): Promise<ComponentType> {
  // All of it before anything waits: without a network no script comes.
  const [{ outbox, readDrafts }, { KeptHere }] = await Promise.all([loadOutbox(), untilLoaded(loadKeptHere)])
  await readDrafts()
  void outbox.start(person)
  return KeptHere
}

const wakeOutbox = () => void loadOutbox().then(({ outbox }) => outbox.wake())

/**
 * Sends what waits of whoever is signed in, soon after the page stands; again at once when the network may be back.
 * @returns what shows the queue, once it is here.
 */
export function useOutbox(person: SignedIn, isLive: boolean): ComponentType | null {
  const { id, name } = person
  const [KeptHere, setKeptHere] = useState<ComponentType | null>(null)
  useEffect(() => {
    const start = () => void startOutbox({ id, name }).then((part) => setKeptHere(() => part))
    const timer = window.setTimeout(start, afterMs)
    window.addEventListener('online', wakeOutbox)
    return () => {
      window.clearTimeout(timer)
      window.removeEventListener('online', wakeOutbox)
    }
  }, [id, name])
  const wasLive = useRef(isLive)
  useEffect(() => {
    if (isLive && !wasLive.current) wakeOutbox()
    wasLive.current = isLive
  }, [isLive])
  return KeptHere
}

/** Where nobody is signed in: sees what waits on this device, and sends nothing. */
export function useLookAtQueue(): void {
  useEffect(() => void loadOutbox().then(({ outbox }) => outbox.start(null)), [])
}
