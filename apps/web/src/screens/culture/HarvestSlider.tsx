'use client'

import type { Culture, CultureOutlook } from '@fryward/shared'
import { sayNumber, sayQuantity } from '@fryward/words'
import { useId } from 'react'
import slider from '@/base/forms/slider.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from './cultures.module.css'
import { dailyTake } from './daily-take.ts'

type Props = {
  culture: Culture
  outlook: CultureOutlook
  /** What the slider stands at; undefined until somebody moved it. */
  percent: number | undefined
  /** The picture above is still the one before. */
  isWaiting: boolean
  onPercent: (percent: number | undefined) => void
}

/** More than half a vessel a day no rotifer culture grows back. common practice is a fifth to a third. */
const mostPercent = 50
const stepPercent = 1

/** The list takes more than that of a culture that stands too dense; day after day as much would thin it out. */
const moreThanThat = (percent: number | undefined) =>
  percent === undefined ? ': today’s list takes more, to bring it down to that' : ': this is more, and it thins out'

/** "What if I take this much each day?": the days ahead are drawn anew above, and this says what it would feed. */
export function HarvestSlider({ culture, outlook, percent, isWaiting, onPercent }: Props) {
  const voice = useVoice()
  const id = useId()
  const shown = percent ?? Math.min(mostPercent, Math.round(outlook.harvestSharePerDay * 100))
  // Until somebody moves it, the list's own litres: a share rounded to per cents would come to others.
  const share = percent === undefined ? outlook.harvestSharePerDay : percent / 100
  const { volumeL, animals } = dailyTake({ culture, outlook, share })
  const litres = sayQuantity({ value: volumeL, unit: 'L' }, voice)
  const sustainable = outlook.sustainableSharePerDay
  return (
    <div className={styles.slider}>
      <label htmlFor={id}>
        Take this much each day: <strong className={styles.taken}>{shown}%</strong>
      </label>
      <div className={slider.track}>
        {sustainable !== null && (
          <span
            className={styles.mark}
            style={{ '--share': Math.min(1, (sustainable * 100) / mostPercent) } as React.CSSProperties}
            aria-hidden="true"
          />
        )}
        <input
          id={id}
          type="range"
          min={0}
          max={mostPercent}
          step={stepPercent}
          value={shown}
          aria-valuetext={`${shown}% a day, ${litres}`}
          aria-describedby={`${id}-feeds`}
          onChange={(event) => onPercent(Number(event.currentTarget.value))}
        />
        <div className={styles.scale} aria-hidden="true">
          <span>0%</span>
          <span>{mostPercent}%</span>
        </div>
      </div>
      <p id={`${id}-feeds`} aria-live="polite" aria-busy={isWaiting}>
        {shown === 0 ? (
          'Nothing is taken: it feeds no larvae.'
        ) : (
          <>
            <strong>{litres}</strong> a day
            {animals !== null && (
              <>
                , about <strong>{sayNumber(animals, voice)}</strong> animals a day to feed with
              </>
            )}
          </>
        )}
      </p>
      {sustainable !== null && (
        <p className={styles.soft}>
          <span className={styles.markKey} aria-hidden="true" /> Day after day about {Math.round(sustainable * 100)} %
          keeps it where it gives most{shown > sustainable * 100 && moreThanThat(percent)}.
        </p>
      )}
      {percent !== undefined && (
        <div>
          <Button variant="subtle" onClick={() => onPercent(undefined)}>
            Back to what is planned
          </Button>
        </div>
      )}
    </div>
  )
}
