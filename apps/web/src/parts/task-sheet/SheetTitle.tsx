'use client'

import type { Task } from '@fryward/shared'
import { amountPlace, sayTitle, titlePieces } from '@fryward/words'
import { Amount, PieceText } from '@/base/quantities/Amount.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './sheet.module.css'

/** The vessel, then what and how much: the amount once, large, and of what where the sentence does not name it. */
export function SheetTitle({ task }: { task: Task }) {
  const voice = useVoice()
  const place = amountPlace(task.title, task.amount)
  const text = sayTitle(task.title, voice)
  const isNamed = task.amountOf === null || text.toLowerCase().includes(task.amountOf.toLowerCase())
  return (
    <>
      <span className={styles.subject}>{task.subject.name}</span>
      <span className={styles.title}>
        {place === undefined ? text : <PieceText pieces={titlePieces(task.title, voice)} large={place} />}
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
