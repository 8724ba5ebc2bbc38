'use client'

import type { Day } from '@fryward/shared'
import { useRoom } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import type { DayName } from '@/parts/tasks/queries.ts'
import styles from './today.module.css'

/** The other day of the two: the address of tomorrow from today, and back. */
export function useOtherDay(day: Day | undefined, name: DayName) {
  const base = `/rooms/${useRoom().id}/today`
  const isToday = day ? day.date === day.today : name === 'today'
  return { isToday, href: isToday ? `${base}?date=tomorrow` : base }
}

/** Today and tomorrow, one tap apart. */
export function DayLinks({ day, name }: { day: Day | undefined; name: DayName }) {
  const { isToday, href } = useOtherDay(day, name)
  return (
    <Link className={styles.dayLink} href={href}>
      {isToday ? 'Tomorrow' : 'Back to today'}
    </Link>
  )
}
