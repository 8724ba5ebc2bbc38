'use client'

import { useQueue } from '@/base/outbox/queue-state.ts'
import { OthersLine } from './OthersLine.tsx'
import { RefusedList } from './RefusedList.tsx'
import { WaitingLine } from './WaitingLine.tsx'

/** What this device keeps: what waits, what was refused, and what is other people's. */
export function KeptHere() {
  const { refused } = useQueue()
  return (
    <>
      <OthersLine />
      <RefusedList refused={refused} />
      <WaitingLine />
    </>
  )
}
