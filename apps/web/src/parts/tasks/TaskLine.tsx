'use client'

import type { Task } from '@fryward/shared'
import { amountPlace, sayQuantity, sayTime, sayTitle, titlePieces, toPlainDate } from '@fryward/words'
import type { ReactNode } from 'react'
import { Amount, PieceText } from '@/base/quantities/Amount.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import styles from './line.module.css'
import { useOpenTask, useOpenTaskId } from './open-task.ts'
import { TaskAction } from './TaskAction.tsx'
import { TaskOutcome } from './TaskOutcome.tsx'

type Props = {
  task: Task
  now: Date
  /** The vessel's drawing and name, where no heading above holds them. */
  name?: ReactNode
}

/** One due action: the amount large, the sentence, one button. The sentence opens the sheet. */
export function TaskLine({ task, now, name }: Props) {
  const openTask = useOpenTask()
  const isOpened = useOpenTaskId() === task.id
  const hasGlyph = Boolean(name) && task.subject.kind !== 'room'
  return (
    <li className={styles.line} data-state={task.state} data-task={task.key} data-opened={isOpened || undefined}>
      <div className={styles.told} data-named={hasGlyph || undefined}>
        {name}
        <button type="button" className={styles.what} onClick={() => openTask(task.id)} aria-haspopup="dialog">
          <TaskSentence task={task} />
          <AmountChange task={task} />
        </button>
      </div>
      {task.state === 'open' ? <TaskAction task={task} now={now} /> : <TaskOutcome task={task} now={now} />}
    </li>
  )
}

/** Number first: "2.6 mL concentrate into R2, second feed". */
function TaskSentence({ task }: { task: Task }) {
  const voice = useVoice()
  const place = amountPlace(task.title, task.amount)
  // A space that does not break: the caret stays with the last word.
  const more = (
    <span className={styles.more} aria-hidden="true">
      {'\u00a0›'}
    </span>
  )
  if (place !== undefined)
    return (
      <span className={styles.sentence}>
        <PieceText pieces={titlePieces(task.title, voice)} large={place} />
        {more}
      </span>
    )
  return (
    <>
      {task.amount && (
        <span className={styles.sentence}>
          <Amount quantity={task.amount} isLarge /> {task.amountOf}
        </span>
      )}
      <span className={task.amount ? styles.title : styles.sentence}>
        {sayTitle(task.title, voice)}
        {more}
      </span>
    </>
  )
}

/** The list moves under people's eyes when the room changes: say so where the number stands. Before its day nobody saw it. */
function AmountChange({ task }: { task: Task }) {
  const voice = useVoice()
  const { timeZone } = useRoom()
  const last = task.changes.at(-1)
  if (task.state !== 'open' || !last?.from || toPlainDate(last.at, timeZone) !== task.onDate) return null
  return (
    <span className={styles.change}>
      was {sayQuantity(last.from, voice)} until {sayTime(last.at, voice)}
    </span>
  )
}
