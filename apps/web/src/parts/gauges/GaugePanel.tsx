'use client'

import type { Gauge, Instant, Mark } from '@fryward/shared'
import { gaugeQuantityLabels, sayMoment, saySaturation } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { GaugeChart } from './GaugeChart.tsx'
import styles from './gauges.module.css'
import { withTail } from './live-tail.ts'
import { seriesOptions } from './queries.ts'
import { SaveCsv } from './SaveCsv.tsx'
import { sayRead } from './say-read.ts'

type Props = { gauge: Gauge; span: { from: Instant; to: Instant }; marks: readonly Mark[] }

/** What a gauge reads now, and how it came there. */
export function GaugePanel({ gauge, span, marks }: Props) {
  const voice = useVoice()
  const room = useRoom()
  const now = useServerNow()
  const series = useQuery(seriesOptions(room.id, { gaugeId: gauge.id, ...span }))
  const { latest } = gauge
  return (
    <>
      <p className={styles.head}>
        <strong>{gaugeQuantityLabels[gauge.quantity]}</strong>
        <span>
          {latest ? `${sayRead(gauge, latest.value, voice)}, ${sayMoment(latest.at, now, voice)}` : 'nothing read yet'}
        </span>
      </p>
      {gauge.saturation && <p className={styles.soft}>{saySaturation(gauge.saturation, voice)}</p>}
      <Loaded query={series} skeleton={<Bones heights={[10]} />} what="The chart">
        {(data) => (
          <>
            <GaugeChart gauge={gauge} series={withTail(data, latest)} marks={marks} timeZone={room.timeZone} />
            {data.points.length > 0 && <SaveCsv gauge={gauge} series={data} />}
          </>
        )}
      </Loaded>
    </>
  )
}
