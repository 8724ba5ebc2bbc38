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
import { endsOf } from './ends-of.ts'
import { FeedTable } from './FeedTable.tsx'
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
        <Notice>Nobody eats rotifers on this day.</Notice>
      ) : (
        <div className={styles.layout}>
          <Card>
            <Suspense fallback={<Bones heights={[18]} />}>
              <FlowChart
                day={day}
                ends={ends}
                label={`Who eats from what, ${title}. The table beside it says the same.`}
              />
            </Suspense>
          </Card>
          <FeedTable day={day} ends={ends} title={title} />
        </div>
      )}
    </>
  )
}
