'use client'

import type { HandOver } from '@fryward/shared'
import { sayNight } from '@/base/dates/say.ts'
import { Moon } from '@/base/ui/Moon.tsx'
import styles from './hand-over.module.css'

/** Nights of hatching as moons with their number. */
export function NightList({ nights, today }: { nights: HandOver['coming']; today: string }) {
  return (
    <ul className={styles.nights} aria-label="Nights it may hatch">
      {nights.map((night) => (
        <li key={night.date} className={styles.night}>
          <Moon probability={night.probability} />
          <strong>{Math.round(night.probability * 100)} %</strong>
          <span>{sayNight(night.date, today)}</span>
        </li>
      ))}
    </ul>
  )
}
