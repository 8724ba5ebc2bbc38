'use client'

import type { SignedIn } from '@/base/room/person-context.tsx'
import { useOutbox } from './use-outbox.ts'

/** Where a page says what this device keeps: what waits at the foot, what needs somebody above the page. */
export function OutboxPlace({ person, isLive }: { person: SignedIn; isLive: boolean }) {
  const KeptHere = useOutbox(person, isLive)
  return KeptHere && <KeptHere />
}
