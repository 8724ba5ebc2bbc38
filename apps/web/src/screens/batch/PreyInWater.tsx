'use client'

import type { Id } from '@fryward/shared'
import { dayMs } from '@fryward/words'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { Suspense } from 'react'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { late } from '@/base/ui/late.ts'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { factsOptions } from '@/parts/facts/queries.ts'
import { rulesOptions } from '@/parts/rules/queries.ts'
import { PreyTable } from './PreyTable.tsx'
import { heldBand, readPrey } from './prey-chart.ts'
import { preyChartHeight } from './prey-lanes.ts'
import { sayPrey } from './say-prey.ts'

const PreyChart = late(() => import('./PreyChart.tsx'), 'PreyChart')

/** Days drawn: long enough to see whether the feeds hold it, short enough to tell the rounds apart. */
const shownDays = 4
const kinds = ['count', 'feeding'] as const

/** Prey left in the larvae's water over the hours, against what is meant to be held. */
export function PreyInWater({ batchId, until }: { batchId: Id; until: string | null }) {
  const room = useRoom()
  const pages = useInfiniteQuery(factsOptions(room.id, batchId, kinds))
  const held = heldBand(useQuery(rulesOptions(room.id)).data ?? [])
  const now = useServerNow()
  const end = until === null ? now : new Date(until)
  const start = new Date(end.getTime() - shownDays * dayMs)
  return (
    <Section title="Prey in the water">
      <Loaded query={pages} skeleton={<Bones heights={[19]} />} what="The counts of prey">
        {(data) => {
          const facts = data.pages.flatMap((page) => page.facts)
          const { counts, feeds } = readPrey(facts, start.toISOString())
          if (counts.length === 0)
            return (
              <Notice>
                {until === null
                  ? `No prey was counted in the last ${shownDays} days. Record a count below, and it is drawn here.`
                  : `No prey was counted in its last ${shownDays} days.`}
              </Notice>
            )
          const sentence = sayPrey(counts, held, { now, voice: room })
          return (
            <Card>
              <p>
                <strong>{sentence}</strong>
              </p>
              <Suspense fallback={<Bones heights={[preyChartHeight / 16]} />}>
                <PreyChart
                  counts={counts}
                  feeds={feeds}
                  held={held}
                  span={{ start, end }}
                  timeZone={room.timeZone}
                  sentence={sentence}
                />
              </Suspense>
              <PreyTable counts={counts} now={now} />
            </Card>
          )
        }}
      </Loaded>
    </Section>
  )
}
