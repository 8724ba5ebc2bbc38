'use client'

import type { Gauge } from '@fryward/shared'
import { gaugeQuantityLabels, sayMoment, sayQuantity } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useServerNow } from '@/base/dates/use-now.ts'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { GaugeChart } from './GaugeChart.tsx'
import styles from './gauges.module.css'
import { seriesOptions } from './queries.ts'
import { SaveCsv } from './SaveCsv.tsx'

const dayMs = 86_400_000
const spans = [
  { value: '1', label: 'Day' },
  { value: '7', label: 'Week' },
  { value: '30', label: 'Month' },
  { value: '365', label: 'Year' },
] as const

// Charts move on in steps of this: each step is asked for once, whatever looks at it.
const stepMs = 60_000

/** What a gauge reads now, and over a span that one chooses. */
export function GaugeView({ gauge }: { gauge: Gauge }) {
  const voice = useVoice()
  const room = useRoom()
  const [days, setDays] = useState<string>('1')
  const now = useServerNow()
  const to = new Date(Math.ceil(now.getTime() / stepMs) * stepMs)
  const from = new Date(to.getTime() - Number(days) * dayMs)
  const series = useQuery(seriesOptions(room.id, { gaugeId: gauge.id, from: from.toISOString(), to: to.toISOString() }))
  const { latest } = gauge
  return (
    <div className={styles.gauge}>
      <p className={styles.head}>
        <strong>{gaugeQuantityLabels[gauge.quantity]}</strong>
        <span>
          {latest
            ? `${sayQuantity({ value: latest.value, unit: gauge.unit }, voice)}, ${sayMoment(latest.at, now, voice)}`
            : 'nothing read yet'}
        </span>
      </p>
      <ChoiceChips legend="Over a" choices={spans} value={days} onChoose={setDays} />
      <Loaded query={series} skeleton={<Bones heights={[10]} />} what="The chart">
        {(data) => (
          <>
            <GaugeChart gauge={gauge} series={data} timeZone={room.timeZone} />
            {data.points.length > 0 && <SaveCsv gauge={gauge} series={data} />}
          </>
        )}
      </Loaded>
    </div>
  )
}
