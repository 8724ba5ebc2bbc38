'use client'

import type { Task } from '@fryward/shared'
import { sayTitle } from '@fryward/words'
import { useQueuedTask } from '@/base/outbox/queue-state.ts'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from './line.module.css'
import { useOpenTask } from './open-task.ts'
import { asksForCount, earlyQuestion, isAhead, isOneTap, needsNoNumber } from './task-state.ts'
import { useOneTap } from './use-one-tap.ts'

/** The one button of an open task: done in one tap, or the sheet where something is to be recorded or read first. */
export function TaskAction({ task, now }: { task: Task; now: Date }) {
  const voice = useVoice()
  const room = useRoom()
  const mayAct = useMay('sign_off')
  const openTask = useOpenTask()
  const { signOffNow, isBusy } = useOneTap(task)
  const { isQueued, isStuck } = useQueuedTask(task.id)
  if (!mayAct) return null
  if (isAhead(task, { now, timeZone: room.timeZone })) return <span className={styles.notYours}>not today</span>
  if (room.myRole === 'stand_in' && !task.isForStandIn) return <span className={styles.notYours}>for a caretaker</span>
  if (isStuck) return <span className={styles.notYours}>waiting for network</span>
  const title = `${sayTitle(task.title, voice)}, ${task.subject.name}`
  if (!isOneTap(task) || earlyQuestion(task, { at: now, rounds: room.rounds })) {
    const label = needsNoNumber(task) && !asksForCount(task) ? 'Read' : 'Record'
    return (
      <Button
        className={styles.action}
        variant="default"
        isBusy={isQueued}
        onClick={() => openTask(task.id)}
        aria-label={`${label}: ${title}`}
        aria-haspopup="dialog"
      >
        {label}
      </Button>
    )
  }
  return (
    <Button
      className={styles.action}
      variant="filled"
      onClick={signOffNow}
      isBusy={isBusy || isQueued}
      aria-label={`Done: ${title}`}
    >
      Done
    </Button>
  )
}
