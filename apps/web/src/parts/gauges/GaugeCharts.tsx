'use client'

import type { Gauge } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useServerNow } from '@/base/dates/use-now.ts'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { GaugePanel } from './GaugePanel.tsx'
import styles from './gauges.module.css'
import { MarkList } from './MarkList.tsx'
import { marksOptions } from './queries.ts'

const hourMs = 3_600_000
const spans = [
  { value: '1', label: 'Hour' },
  { value: '24', label: 'Day' },
  { value: '168', label: 'Week' },
  { value: '720', label: 'Month' },
  { value: '8760', label: 'Year' },
] as const

// Charts move on in steps of this: each step is asked for once, whatever looks at it.
const stepMs = 60_000

/** Gauges of one vessel, one under another over the same time, with what happened in it. */
export function GaugeCharts({ gauges: [first, ...others] }: { gauges: readonly [Gauge, ...Gauge[]] }) {
  const room = useRoom()
  const [hours, setHours] = useState<string>('24')
  const now = useServerNow()
  const to = new Date(Math.ceil(now.getTime() / stepMs) * stepMs)
  const span = { from: new Date(to.getTime() - Number(hours) * hourMs).toISOString(), to: to.toISOString() }
  const marks = useQuery(marksOptions(room.id, { subjectId: first.subject.id, ...span })).data ?? []
  return (
    <div className={styles.gauge}>
      <ChoiceChips legend="Over the last" choices={spans} value={hours} onChoose={setHours} />
      {[first, ...others].map((gauge) => (
        <GaugePanel key={gauge.id} gauge={gauge} span={span} marks={marks} />
      ))}
      <MarkList marks={marks} />
    </div>
  )
}
