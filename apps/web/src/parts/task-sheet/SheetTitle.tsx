'use client'

import type { Task } from '@fryward/shared'
import { Amount, PhraseWithAmount, placeOf, toText } from '@/base/quantities/Amount.tsx'
import { useUnitSystem } from '@/base/room/room-context.tsx'
import styles from './sheet.module.css'

/** The vessel, then what and how much: the amount once, large, and of what where the sentence does not name it. */
export function SheetTitle({ task }: { task: Task }) {
  const system = useUnitSystem()
  const place = placeOf(task.title, task.amount)
  const text = toText(task.title, system)
  const isNamed = task.amountOf === null || text.toLowerCase().includes(task.amountOf.toLowerCase())
  return (
    <>
      <span className={styles.subject}>{task.subject.name}</span>
      <span className={styles.title}>
        {place === undefined ? text : <PhraseWithAmount phrase={task.title} large={place} />}
      </span>
      {place === undefined && task.amount ? (
        <span className={styles.title}>
          <Amount quantity={task.amount} isLarge /> {task.amountOf}
        </span>
      ) : (
        !isNamed && <span className={styles.of}>{task.amountOf}</span>
      )}
    </>
  )
}
