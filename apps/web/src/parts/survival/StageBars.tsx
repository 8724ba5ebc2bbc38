'use client'

import type { CareKind, SurvivalStage } from '@fryward/shared'
import { sayReached, sayShareOf, sayStage, sayWhole } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './stages.module.css'

type Props = { stages: readonly SurvivalStage[]; care: CareKind; label: string }

/**
 * How many made it, a bar a stage: filled as far as is known, hatched as far as it may have been. What the bars show
 * stands beside them in figures.
 */
export function StageBars({ stages, care, label }: Props) {
  const most = Math.max(1, ...stages.map(({ atLeast, atMost }) => Math.max(atLeast ?? 0, atMost ?? 0)))
  const last = stages.findLastIndex(({ status }) => !isAhead(status))
  const ahead = stages.slice(last + 1)
  return (
    <ol className={styles.stages} aria-label={label}>
      {stages.slice(0, last + 1).map((stage) => (
        <li key={stage.stage} className={styles.stage}>
          <span className={styles.name}>{sayStage(stage.stage, care)}</span>
          <Bar stage={stage} most={most} />
          <Figures stage={stage} care={care} />
        </li>
      ))}
      {ahead.length > 0 && <Ahead stages={ahead} care={care} />}
    </ol>
  )
}

const isAhead = (status: SurvivalStage['status']) => status === 'not_yet' || status === 'not_followed'

/** What none of them has come to, in one line. */
function Ahead({ stages, care }: Omit<Props, 'label'>) {
  const voice = useVoice()
  const names = stages.map(({ stage }) => sayStage(stage, care).toLowerCase()).join(', ')
  return (
    <li className={styles.share}>
      {stages[0] && sayReached(stages[0], voice)}: {names}
    </li>
  )
}

function Bar({ stage, most }: { stage: SurvivalStage; most: number }) {
  const share = (number: number) => `${(100 * number) / most}%`
  const known = stage.atLeast ?? 0
  const perhaps = Math.max(0, (stage.atMost ?? known) - known)
  return (
    <span className={styles.track} aria-hidden="true">
      <span className={styles.known} style={{ width: share(known) }} />
      {perhaps > 0 && <span className={styles.perhaps} style={{ width: share(perhaps) }} />}
    </span>
  )
}

function Figures({ stage, care }: { stage: SurvivalStage; care: CareKind }) {
  const voice = useVoice()
  const { interval, atLeast, atMost, isAboveBook } = stage
  const isEstimate = interval !== null && interval.lower < interval.upper && atLeast === atMost
  const share = sayShareOf(stage, care, voice)
  return (
    <span className={styles.figures}>
      <strong data-unknown={atLeast === null && atMost === null ? '' : undefined}>{sayReached(stage, voice)}</strong>
      {isEstimate && (
        <span>
          {' '}
          (counting: {sayWhole(interval.lower, voice)} to {sayWhole(interval.upper, voice)})
        </span>
      )}
      {share !== null && <span className={styles.share}> {share}</span>}
      {isAboveBook && <span className={styles.share}> more than there can have been: a count is off</span>}
    </span>
  )
}
