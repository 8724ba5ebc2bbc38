'use client'

import type { Task } from '@fryward/shared'
import { sayMoment, sayWithdrawal, verbDoneLabels } from '@fryward/words'
import { sentenceOf } from '@/base/api/problem.ts'
import { usePerson } from '@/base/room/person-context.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import styles from './line.module.css'
import { useUndo } from './queries.ts'
import { standingSignOff, undoableUntil } from './task-state.ts'

/** What became of a task: who did it and when, or why not; with the undo while it lasts. */
export function TaskOutcome({ task, now }: { task: Task; now: Date }) {
  const voice = useVoice()
  const room = useRoom()
  const may = useMay('sign_off')
  const person = usePerson()
  const undo = useUndo(room, true)
  const toast = useToast()
  const signOff = standingSignOff(task)
  // A stand-in takes back what is their own; a skip tells a name, and names are unique in a room.
  const isOwn = task.state === 'done' ? signOff?.byUserId === person?.id : task.closedByName === person?.name
  const isTheirs = room.myRole !== 'stand_in' || isOwn
  const canUndo = may && isTheirs && undoableUntil(task, now) !== null
  // In the place of the message that still offers to undo it; the line has become another by then.
  const takeBack = () =>
    void undo.mutateAsync(task).then(
      () => toast({ text: `Taken back: ${task.subject.name}` }),
      (error: unknown) => toast({ text: sentenceOf(error) }),
    )
  return (
    <div className={styles.outcome}>
      <span className={styles.outcomeText}>
        {task.state === 'done' && <DoneSign />}
        <span>
          {task.state === 'done' && signOff && (
            <>
              <strong>{verbDoneLabels[task.verb]}</strong> {sayMoment(signOff.doneAt, now, voice)}, {signOff.byName}
              {task.signOffs.filter((one) => one.undoneAt === null).length > 1 && ' (done twice)'}
            </>
          )}
          {task.state === 'skipped' && (
            <>
              <strong>Skipped</strong>
              {task.closedByName ? ` by ${task.closedByName}` : ''}: {task.reason}
            </>
          )}
          {task.state === 'missed' && <strong>Passed, not done</strong>}
          {task.state === 'withdrawn' && sayWithdrawal(task.reason)}
        </span>
      </span>
      {canUndo && (
        <Button
          variant="subtle"
          isBusy={undo.isPending}
          onClick={takeBack}
          aria-label={`Undo: ${task.subject.name}, ${verbDoneLabels[task.verb].toLowerCase()}`}
        >
          Undo
        </Button>
      )}
    </div>
  )
}

function DoneSign() {
  return (
    <svg className={styles.tick} viewBox="0 0 20 20" aria-hidden="true">
      <path d="m4 10.5 4 4 8-9" fill="none" stroke="currentColor" strokeWidth="2.6" strokeLinecap="round" />
    </svg>
  )
}
