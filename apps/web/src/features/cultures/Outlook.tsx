'use client'

import type { Culture, CultureOutlook } from '@fryward/shared'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import dynamic from 'next/dynamic'
import { useDeferredValue, useState } from 'react'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { outlookOptions } from '@/features/vessels/queries.ts'
import { toQuantityText } from '@/quantities/Amount.tsx'
import { Bones } from '@/ui/Bones.tsx'
import { Loaded } from '@/ui/Loaded.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { Card } from '@/ui/Page.tsx'
import { chartHeight } from './chart-frame.ts'
import styles from './cultures.module.css'
import { OutlookTable } from './OutlookTable.tsx'

const DensityChart = dynamic(() => import('./DensityChart.tsx').then((part) => part.DensityChart), {
  ssr: false,
  loading: () => <div style={{ height: chartHeight }} />,
})

/** Density behind and ahead, with the one question a keeper asks: what if I take this much each day? */
export function Outlook({ culture }: { culture: Culture }) {
  const room = useRoom()
  const [percent, setPercent] = useState<number>()
  const settled = useDeferredValue(percent)
  const query = useQuery({
    ...outlookOptions(room.id, culture.id, settled === undefined ? {} : { harvestShare: settled / 100 }),
    placeholderData: keepPreviousData,
  })
  return (
    <Card>
      <Loaded query={query} skeleton={<Bones heights={[2, 18, 4]} />} what="The outlook">
        {(outlook) => (
          <>
            <p className={styles.sentence}>{outlook.sentence}</p>
            {outlook.counts.length === 0 ? (
              <Notice>Not counted yet. After the first count the curve starts here, after a few it looks ahead.</Notice>
            ) : (
              <DensityChart outlook={outlook} timeZone={room.timeZone} />
            )}
            {outlook.ahead.length > 0 && (
              <HarvestSlider culture={culture} outlook={outlook} percent={percent} onPercent={setPercent} />
            )}
            <OutlookTable outlook={outlook} timeZone={room.timeZone} />
          </>
        )}
      </Loaded>
    </Card>
  )
}

type SliderProps = {
  culture: Culture
  outlook: CultureOutlook
  percent: number | undefined
  onPercent: (percent: number) => void
}

/** Shares of the vessel taken a day; 60 % would need counting twice a day. common practice is a fifth to a third. */
const mostPercent = 60

function HarvestSlider({ culture, outlook, percent, onPercent }: SliderProps) {
  const { units } = useRoom()
  const shown = percent ?? Math.round(outlook.harvestSharePerDay * 100)
  const litres = toQuantityText({ value: (culture.volumeL * shown) / 100, unit: 'L' }, units)
  const sustainable = outlook.sustainableSharePerDay
  return (
    <div>
      <label className={styles.slider}>
        <span>
          <strong>
            Take {shown} % each day, {litres}
          </strong>
        </span>
        <input
          type="range"
          min={0}
          max={mostPercent}
          step={5}
          value={shown}
          onChange={(event) => onPercent(Number(event.currentTarget.value))}
        />
      </label>
      {sustainable !== null && (
        <p className={styles.soft}>It keeps up with about {Math.round(sustainable * 100)} % a day.</p>
      )}
    </div>
  )
}
