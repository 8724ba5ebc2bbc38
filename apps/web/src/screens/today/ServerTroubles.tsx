'use client'

import type { DiskState } from '@fryward/shared'
import { sayMoment, sayNumber } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { serverNow } from '@/base/api/server-clock.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { serverStateOptions } from '@/parts/session/queries.ts'

const dayMs = 86_400_000

const titles = {
  little: 'The disk of the server is nearly full',
  full: 'The disk of the server is full: nothing is saved',
} as const satisfies Partial<Record<DiskState, string>>

/** For whoever claimed the server: what they put right before it stops the room; nobody else can. */
export function ServerTroubles() {
  const voice = useVoice()
  const state = useQuery(serverStateOptions()).data
  if (!state) return null
  const { disk, troubles } = state
  const recent = troubles.filter(({ at }) => serverNow().getTime() - Date.parse(at) < dayMs)
  return (
    <>
      {disk && disk.state !== 'plenty' && (
        <Notice tone="worry" title={titles[disk.state]}>
          <p>
            {sayNumber(Math.round(disk.freeBytes / 1e8) / 10, voice)} GB of{' '}
            {sayNumber(Math.round(disk.totalBytes / 1e9), voice)} are free. Take old backups and what other programs
            left off that disk, or move the data folder to a larger one.
          </p>
        </Notice>
      )}
      {recent.map(({ part, at, sentence }) => (
        <Notice key={part} tone="worry" title={`On the server, ${sayMoment(at, serverNow(), voice)}`}>
          <p>{sentence}</p>
        </Notice>
      ))}
    </>
  )
}
