'use client'

import type { FoodAnswer, FoodChange, FoodCure, FoodOutlook, FoodView, Instant, PlainDate } from '@fryward/shared'
import { sayAfter, sayFoodAhead, sayFoodChange, sayNotAsked } from '@fryward/words'
import { Suspense, useState } from 'react'
import { useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { late } from '@/base/ui/late.ts'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { Cures } from './Cures.tsx'
import { FoodKeys } from './FoodKeys.tsx'
import { FoodTable } from './FoodTable.tsx'
import styles from './food.module.css'
import { chartHeight } from './food-lanes.ts'
import { hatchNightsOf } from './food-nights.ts'
import { Hatches } from './Hatches.tsx'
import { UnderWay } from './UnderWay.tsx'
import { WhatIfBox } from './WhatIfBox.tsx'

const FoodChart = late(() => import('./FoodChart.tsx'), 'FoodChart')

/** A picture after something: a cure as it was tried, or a question's answer. */
type Shown = { change: FoodChange; cure: FoodCure | null; after: FoodOutlook | FoodCure }

type Props = { answer: FoodAnswer & { madeAt: Instant }; underWay: FoodView['underWay']; today: PlainDate }

/** The chart with what would help and what might happen, each of which redraws it. */
export function FoodAhead({ answer, underWay, today }: Props) {
  const voice = useVoice()
  const [shown, setShown] = useState<Shown | null>(null)
  const { outlook } = answer
  const names = new Map([
    ...outlook.cultures.map(({ id, name }) => [id, name] as const),
    ...outlook.eaters.map(({ subjectId, name }) => [subjectId, name] as const),
    ...(outlook.pairs ?? []).map(({ pairId, name }) => [pairId, name] as const),
  ])
  const nameOf = (id: string) => names.get(id) ?? 'it'
  const label = shown
    ? `Food and mouths, if: ${sayFoodChange(shown.change, { nameOf, today, voice })}`
    : `Food and mouths. ${sayFoodAhead(outlook, { today, voice })}`
  return (
    <>
      <Card>
        {shown && (
          <div className={styles.supposed} aria-live="polite">
            <p>
              <strong>{sayFoodChange(shown.change, { nameOf, today, voice })}.</strong>{' '}
              {sayAfter(shown.after, outlook, { today, voice })}
            </p>
            <Button onClick={() => setShown(null)}>Back to as it is</Button>
          </div>
        )}
        <Suspense fallback={<Bones heights={[chartHeight / 16]} />}>
          <FoodChart
            outlook={outlook}
            after={shown?.after.days ?? null}
            worryDate={(shown ? shown.after.worry : outlook.worry)?.date ?? null}
            label={label}
          />
        </Suspense>
        <FoodKeys
          isChanged={shown !== null}
          hasNights={hatchNightsOf(outlook).length > 0}
          hasHatches={(outlook.hatches ?? []).length > 0}
        />
        <FoodTable days={shown?.after.days ?? outlook.days} outlook={outlook} />
      </Card>
      <Cures
        {...{ answer, today, nameOf }}
        shown={shown?.cure ?? null}
        onShow={(cure) => setShown(cure && { change: cure.change, cure, after: cure })}
      />
      <Hatches {...{ outlook, today }} />
      <UnderWay {...{ underWay, today, nameOf }} />
      <WhatIfBox
        {...{ today, nameOf }}
        changes={changesToAsk(outlook)}
        notAsked={sayNotAsked(outlook.pairs ?? [])}
        onAnswer={(change, { after }) => setShown({ change, cure: null, after })}
      />
      <Gaps gaps={outlook.gaps} />
    </>
  )
}

const daysAway = 4

/** What a breeder lies awake over: another clutch, one pair more, a crash, days away. */
const changesToAsk = ({ cultures, eaters, pairs = [] }: FoodOutlook): FoodChange[] => [
  ...pairs
    .filter(({ isPlanned }) => isPlanned)
    .flatMap(({ pairId }): FoodChange[] => [
      { kind: 'pair_spawns', pairId },
      ...(eaters.some(({ kind, subjectId }) => kind === 'spawning' && subjectId === pairId)
        ? [{ kind: 'another_pair', likePairId: pairId } as const]
        : []),
    ]),
  ...cultures
    .filter(({ standing }) => standing !== 'not_counted')
    .flatMap(({ cultureId }): FoodChange[] => (cultureId ? [{ kind: 'culture_crashes', cultureId }] : [])),
  { kind: 'away', days: daysAway },
]

function Gaps({ gaps }: { gaps: readonly string[] }) {
  if (gaps.length === 0) return null
  return (
    <Notice title="Not in the plan">
      <ul className={styles.gaps}>
        {gaps.map((gap) => (
          <li key={gap}>{gap}</li>
        ))}
      </ul>
    </Notice>
  )
}
