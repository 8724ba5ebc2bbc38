'use client'

import { type Mark, markKinds } from '@fryward/shared'
import { markLabels, sayMark, sayMoment } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './gauges.module.css'
import { MarkSign } from './MarkSign.tsx'

/** What the signs over a chart stand for, and the same in words; nothing where nothing happened. */
export function MarkList({ marks }: { marks: readonly Mark[] }) {
  const voice = useVoice()
  if (marks.length === 0) return null
  const kinds = markKinds.filter((kind) => marks.some((mark) => mark.kind === kind))
  return (
    <details>
      <summary className={charts.summary}>
        {kinds.map((kind) => (
          <span key={kind} className={styles.key}>
            <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">
              <MarkSign kind={kind} x={0} y={0} />
            </svg>
            {markLabels[kind]}
          </span>
        ))}
      </summary>
      <ul className={styles.refusals}>
        {marks.toReversed().map((mark) => (
          <li key={`${mark.at} ${mark.kind} ${mark.subject.id} ${mark.alarm?.gaugeId}`}>
            {sayMark(mark)}, {sayMoment(mark.at, serverNow(), voice)}
          </li>
        ))}
      </ul>
    </details>
  )
}
