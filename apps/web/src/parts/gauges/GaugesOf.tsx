'use client'

import type { Id } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { GaugeCharts } from './GaugeCharts.tsx'
import { devicesOptions } from './queries.ts'

/** The gauges that hang in a tank or a culture; nothing where none does. */
export function GaugesOf({ subjectId }: { subjectId: Id }) {
  const room = useRoom()
  const gauges = (useQuery(devicesOptions(room.id)).data ?? [])
    .flatMap((device) => device.gauges)
    .filter(({ subject, endedAt }) => subject.id === subjectId && endedAt === null)
  const [first, ...others] = gauges
  if (!first) return null
  return (
    <Section title="Gauges">
      <Card>
        <GaugeCharts gauges={[first, ...others]} />
      </Card>
    </Section>
  )
}
