'use client'

import { sayMoment } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { serverNow } from '@/base/api/server-clock.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { absencesOptions } from '@/parts/reach/queries.ts'

/** When this server was off: nothing was looked at, and nobody told. */
export function Absences() {
  const room = useRoom()
  const voice = useVoice()
  const absences = useQuery(absencesOptions(room.id)).data ?? []
  if (absences.length === 0) return null
  const say = (at: string) => sayMoment(at, serverNow(), voice)
  return (
    <Section title="When this server was off">
      <p>What happened in the room in these times is not known, and nobody was told of it.</p>
      <ul>
        {absences.map(({ from, to }) => (
          <li key={from}>
            {say(from)} to {say(to)}
          </li>
        ))}
      </ul>
    </Section>
  )
}
