'use client'

import type { HandOver } from '@fryward/shared'
import { sayNight, sayPercent } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { Moon } from '@/base/ui/Moon.tsx'
import styles from './hand-over.module.css'

/** Nights of hatching as moons with their number. */
export function NightList({ nights, today }: { nights: HandOver['coming']; today: string }) {
  const voice = useVoice()
  return (
    <ul className={styles.nights} aria-label="Nights it may hatch">
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
