'use client'

import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { survivalOptions } from '@/parts/survival/queries.ts'
import { ClutchRow } from './ClutchRow.tsx'
import { Compare } from './Compare.tsx'
import { type LaidBetween, WhichClutches } from './WhichClutches.tsx'

/** The owner's review: every clutch stage by stage, then groups of them side by side. */
export function SurvivalPage() {
  const room = useRoom()
  const [range, setRange] = useState<LaidBetween>({})
  const review = useQuery(survivalOptions(room.id, range))
  return (
    <Page
      title="Survival"
      lead="How many made it, clutch by clutch, from what was written down. A number that nobody wrote stays open."
    >
      <WhichClutches range={range} onRange={setRange} />
      <Loaded query={review} skeleton={<Bones heights={[22, 22]} />} what="The survival review">
        {({ rows }) =>
          rows.length === 0 ? (
            <NoClutches isNarrowed={range.from !== undefined || range.to !== undefined} />
          ) : (
            <>
              <Compare range={range} />
              <Section title="Clutch by clutch">
                {rows.map((row) => (
                  <ClutchRow key={row.id} row={row} />
                ))}
              </Section>
            </>
          )
        }
      </Loaded>
    </Page>
  )
}

function NoClutches({ isNarrowed }: { isNarrowed: boolean }) {
  const room = useRoom()
  if (isNarrowed) return <Notice>No eggs were laid between these dates. Take another range.</Notice>
  return (
    <Notice title="No clutch yet">
      <p>When a pair lays, record the eggs on its page; what becomes of them is told here.</p>
      <LinkButton href={`/rooms/${room.id}/room`} variant="filled">
        To the room
      </LinkButton>
    </Notice>
  )
}
