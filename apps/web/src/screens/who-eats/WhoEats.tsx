'use client'

import type { FoodOutlook } from '@fryward/shared'
import { sayDayTitle } from '@fryward/words'
import { Suspense, useId, useState } from 'react'
import slider from '@/base/forms/slider.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { late } from '@/base/ui/late.ts'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { artemiaFlow } from './artemia-flow.ts'
import { endsOf } from './ends-of.ts'
import { FeedTable } from './FeedTable.tsx'
import type { Ends, FlowDay } from './FlowChart.tsx'
import styles from './who-eats.module.css'

const FlowChart = late(() => import('./FlowChart.tsx'), 'FlowChart')

/** One day of the plan, scrubbed along: streams on the left, the same as a table beside them. */
export function WhoEats({ outlook }: { outlook: FoodOutlook }) {
  const voice = useVoice()
  const id = useId()
  const [index, setIndex] = useState(0)
  const day = outlook.days[Math.min(index, outlook.days.length - 1)]
  const today = outlook.days[0]?.date
  if (!day || !today) return null
  const ends = endsOf(outlook, day, voice)
  const artemia = artemiaFlow(outlook, day, voice)
  const title = sayDayTitle(day.date, today, voice)
  const last = outlook.days.length - 1
  return (
    <>
      <div>
        <label htmlFor={id} className={styles.day} aria-live="polite">
          {title}
        </label>
        <div className={styles.days}>
          <Button disabled={index === 0} onClick={() => setIndex(index - 1)} aria-label="A day earlier">
            ‹
          </Button>
          <div className={slider.track}>
            <input
              id={id}
              type="range"
              min={0}
              max={last}
              step={1}
              value={index}
              aria-valuetext={title}
              onChange={(event) => setIndex(Number(event.currentTarget.value))}
            />
          </div>
          <Button disabled={index === last} onClick={() => setIndex(index + 1)} aria-label="A day later">
            ›
          </Button>
        </div>
      </div>
      {ends.eaters.length === 0 ? (
        <Notice>No rotifers are wanted on this day: nobody eats them, or the water still holds enough.</Notice>
      ) : (
        <Flowing flowing={{ day, ends }} title={title} prey="rotifers" />
      )}
      {artemia && <Flowing flowing={artemia} title={title} prey="nauplii" />}
    </>
  )
}

const what = { rotifers: 'Who eats from what', nauplii: 'Who eats Artemia from what' }

type FlowingProps = { flowing: { day: FlowDay; ends: Ends }; title: string; prey: 'rotifers' | 'nauplii' }

function Flowing({ flowing: { day, ends }, title, prey }: FlowingProps) {
  return (
    <div className={styles.layout}>
      {(prey === 'rotifers' || day.gives.length > 0) && (
        <Card>
          <Suspense fallback={<Bones heights={[18]} />}>
            <FlowChart day={day} ends={ends} label={`${what[prey]}, ${title}. The table beside it says the same.`} />
          </Suspense>
        </Card>
      )}
      <FeedTable {...{ day, ends, title, prey }} />
    </div>
  )
}
