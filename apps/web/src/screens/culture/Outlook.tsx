'use client'

import type { Culture } from '@fryward/shared'
import { sayDatesIn } from '@fryward/words'
import { useDebouncedValue } from '@mantine/hooks'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Suspense, useState } from 'react'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { late } from '@/base/ui/late.ts'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { outlookOptions } from '@/parts/cultures/queries.ts'
import { chartHeight } from './chart-lanes.ts'
import styles from './cultures.module.css'
import { HarvestSlider } from './HarvestSlider.tsx'
import { OutlookTable } from './OutlookTable.tsx'

const DensityChart = late(() => import('./DensityChart.tsx'), 'DensityChart')

/** A thumb on the way from a fifth to a half asks once, where it stops. */
const settleMs = 250

/** Density behind and ahead, with the one question a keeper asks: what if I take this much each day? */
export function Outlook({ culture }: { culture: Culture }) {
  const room = useRoom()
  const [percent, setPercent] = useState<number>()
  const [settled] = useDebouncedValue(percent, settleMs)
  const query = useQuery({
    ...outlookOptions(room.id, culture.id, settled === undefined ? {} : { harvestShare: settled / 100 }),
    placeholderData: keepPreviousData,
  })
  const isWaiting = query.isPlaceholderData || settled !== percent
  return (
    <Card>
      <Loaded query={query} skeleton={<Bones heights={[2, 18, 4]} />} what="The outlook">
        {(outlook) => (
          <>
            <p className={styles.sentence}>{sayDatesIn(outlook.sentence, room)}</p>
            {outlook.counts.length === 0 ? (
              <Notice>
                {culture.endedAt === null
                  ? 'Not counted yet. After the first count the curve starts here, after a few it looks ahead.'
                  : 'It was never counted, so there is no curve to draw.'}
              </Notice>
            ) : (
              <div className={styles.redrawn} data-waiting={isWaiting || undefined}>
                <Suspense fallback={<Bones heights={[chartHeight / 16]} />}>
                  <DensityChart outlook={outlook} timeZone={room.timeZone} hasEggs={culture.kind === 'rotifer'} />
                </Suspense>
              </div>
            )}
            {outlook.ahead.length > 0 && (
              <HarvestSlider
                culture={culture}
                outlook={outlook}
                percent={percent}
                isWaiting={isWaiting}
                onPercent={setPercent}
              />
            )}
            <OutlookTable outlook={outlook} timeZone={room.timeZone} />
          </>
        )}
      </Loaded>
    </Card>
  )
}
