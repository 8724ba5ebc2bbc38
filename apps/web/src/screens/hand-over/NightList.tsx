'use client'

import type { CareKind, HandOver } from '@fryward/shared'
import { sayMayCome, sayNight, sayPercent } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { Moon } from '@/base/ui/Moon.tsx'
import styles from './hand-over.module.css'

type Props = { nights: HandOver['coming']; care: CareKind; today: string }

/** Nights of hatching or release as moons with their number. */
export function NightList({ nights, care, today }: Props) {
  const voice = useVoice()
  return (
    <ul className={styles.nights} aria-label={`Nights it ${sayMayCome(care)}`}>
      {nights.map((night) => (
        <li key={night.date} className={styles.night}>
          <Moon probability={night.probability} />
          <strong>{sayPercent(night.probability, voice)}</strong>
          <span>{sayNight(night.date, today, voice)}</span>
        </li>
      ))}
    </ul>
  )
}
