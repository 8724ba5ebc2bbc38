'use client'

import { useQueue } from '@/base/outbox/queue-state.ts'
import { Notice } from '@/base/ui/Notice.tsx'

/** What other people left waiting on this device: that it is there, not what it is. Only they can send it. */
export function OthersLine() {
  const { others } = useQueue()
  if (others.length === 0) return null
  return (
    <Notice>
      {others.map(({ personId, name, count }) => (
        <p key={personId}>
          {name} left {count} {count === 1 ? 'entry' : 'entries'} on this device, not sent yet. It takes {name} to sign
          in here and send {count === 1 ? 'it' : 'them'}.
        </p>
      ))}
    </Notice>
  )
}
