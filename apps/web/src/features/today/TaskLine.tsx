'use client'

import type { Task } from '@fryward/shared'
import { sayTime } from '@/dates/say.ts'
import { useRoom, useUnitSystem } from '@/features/rooms/room-context.tsx'
import { useOpenTask } from '@/features/task-sheet/open-task.ts'
import { Amount, PhraseWithAmount, placeOf, toQuantityText, toText } from '@/quantities/Amount.tsx'
import { isLate } from './arrange.ts'
import { TaskAction } from './TaskAction.tsx'
import { TaskOutcome } from './TaskOutcome.tsx'
import styles from './today.module.css'

type Props = { task: Task; now: Date; roundName?: string | undefined; withSubject?: boolean }

/** One due action: the amount large, the sentence, one button. The sentence opens the sheet. */
export function TaskLine({ task, now, roundName, withSubject = false }: Props) {
  const { timeZone } = useRoom()
  const openTask = useOpenTask()
  const late = isLate(task, now)
  return (
    <li className={styles.line} data-state={task.state} data-task={task.key}>
      <button type="button" className={styles.what} onClick={() => openTask(task.id)} aria-haspopup="dialog">
        <TaskSentence task={task} withSubject={withSubject} />
        {late && (
          <span className={styles.lateNote}>
            due {sayTime(task.dueAt, timeZone)}
            {roundName ? `, ${roundName.toLowerCase()}` : ''}
          </span>
        )}
        <AmountChange task={task} />
        {task.state === 'open' && (
          <span className={styles.more}>
            {task.steps.length > 0 ? 'Steps and why' : 'Why'} <span aria-hidden="true">›</span>
          </span>
        )}
      </button>
      {task.state === 'open' ? <TaskAction task={task} /> : <TaskOutcome task={task} now={now} />}
    </li>
  )
}

/** Number first: "2.6 mL concentrate into R2, second feed". */
function TaskSentence({ task, withSubject }: { task: Task; withSubject: boolean }) {
  const system = useUnitSystem()
  const place = placeOf(task.title, task.amount)
  const text = toText(task.title, system)
  const prefix = withSubject && !text.includes(task.subject.name) && <strong>{task.subject.name}: </strong>
  if (place !== undefined)
    return (
      <span className={styles.sentence}>
        {prefix}
        <PhraseWithAmount phrase={task.title} large={place} />
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
        {prefix}
        {text}
      </span>
    </>
  )
}

/** The list moves under people's eyes when the room changes: say so where the number stands. */
function AmountChange({ task }: { task: Task }) {
  const { timeZone } = useRoom()
  const system = useUnitSystem()
  const last = task.changes.at(-1)
  if (task.state !== 'open' || !last?.from) return null
  return (
    <span className={styles.change}>
      was {toQuantityText(last.from, system)}, worked out again at {sayTime(last.at, timeZone)}
    </span>
  )
}
