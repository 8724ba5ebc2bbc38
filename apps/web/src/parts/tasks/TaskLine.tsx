'use client'

import type { Phrase, Task } from '@fryward/shared'
import type { ReactNode } from 'react'
import { sayTime, toPlainDate } from '@/base/dates/say.ts'
import { Amount, PhraseWithAmount, placeOf, toQuantityText, toText } from '@/base/quantities/Amount.tsx'
import { useRoom, useUnitSystem } from '@/base/room/room-context.tsx'
import styles from './line.module.css'
import { useOpenTask, useOpenTaskId } from './open-task.ts'
import { shortTitle } from './short-title.ts'
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
          <TaskSentence task={task} title={shortTitle(task.title, task.subject.name)} />
          <AmountChange task={task} />
        </button>
      </div>
      {task.state === 'open' ? <TaskAction task={task} /> : <TaskOutcome task={task} now={now} />}
    </li>
  )
}

/** Number first: "2.6 mL concentrate into R2, second feed". */
function TaskSentence({ task, title }: { task: Task; title: Phrase }) {
  const system = useUnitSystem()
  const place = placeOf(title, task.amount)
  // A space that does not break: the caret stays with the last word.
  const more = (
    <span className={styles.more} aria-hidden="true">
      {'\u00a0›'}
    </span>
  )
  if (place !== undefined)
    return (
      <span className={styles.sentence}>
        <PhraseWithAmount phrase={title} large={place} />
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
        {toText(title, system)}
        {more}
      </span>
    </>
  )
}

/** The list moves under people's eyes when the room changes: say so where the number stands. Before its day nobody saw it. */
function AmountChange({ task }: { task: Task }) {
  const { timeZone } = useRoom()
  const system = useUnitSystem()
  const last = task.changes.at(-1)
  if (task.state !== 'open' || !last?.from || toPlainDate(last.at, timeZone) !== task.onDate) return null
  return (
    <span className={styles.change}>
      was {toQuantityText(last.from, system)} until {sayTime(last.at, timeZone)}
    </span>
  )
}
