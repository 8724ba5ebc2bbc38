'use client'

import type { Broker } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from '@/parts/gauges/gauges.module.css'

/** What came by MQTT and was not kept, each topic with its reason; nothing where all was. */
export function RefusedMessages({ refusals }: Pick<Broker, 'refusals'>) {
  const voice = useVoice()
  if (refusals.length === 0) return null
  return (
    <details>
      <summary className={charts.summary}>What came and was not kept ({refusals.length})</summary>
      <ul className={styles.refusals}>
        {refusals.map(({ topic, reason, detail, number, lastAt }) => (
          <li key={`${topic} ${reason}`}>
            <code>{topic}</code> {detail}{' '}
            <span className={styles.soft}>
              {number === 1 ? 'Once' : `${number} times`}, last {sayMoment(lastAt, serverNow(), voice)}.
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}
