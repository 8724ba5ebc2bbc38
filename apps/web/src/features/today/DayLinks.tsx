'use client'

import type { Day } from '@fryward/shared'
import Link from 'next/link'
import { useRoom } from '@/features/rooms/room-context.tsx'
import type { DayName } from './queries.ts'
import styles from './today.module.css'

/** Today and tomorrow, one tap apart. */
export function DayLinks({ day, name }: { day: Day | undefined; name: DayName }) {
  const base = `/rooms/${useRoom().id}/today`
  const isToday = day ? day.date === day.today : name === 'today'
  return (
    <Link className={styles.dayLink} href={isToday ? `${base}?date=tomorrow` : base} prefetch={false}>
      {isToday ? 'Tomorrow' : 'Back to today'}
    </Link>
  )
}
