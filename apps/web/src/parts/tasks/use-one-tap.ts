'use client'

import type { Task } from '@fryward/shared'
import { sayTime, verbDoneLabels } from '@fryward/words'
import { type ApiProblem, isApiProblem, sentenceOf } from '@/base/api/problem.ts'
import { serverNow } from '@/base/api/server-clock.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useShowTask, useSignOff, useUndo } from './queries.ts'
import { isUndoable, standingSignOff } from './task-state.ts'

/** Signs a task off as it stands on the screen, offers the undo, and says so when somebody was faster. */
export function useOneTap(task: Task) {
  const room = useRoom()
  const signOff = useSignOff(room)
  const undo = useUndo(room)
  const showTask = useShowTask(room.id)
  const toast = useToast()
  const undoNow = () => undo.mutate(task, { onError: (error) => toast({ text: sentenceOf(error) }) })

  const tellWhoWasFaster = (error: ApiProblem) => {
    // What the task is by now comes with this refusal.
    const current = error.current as Task
    showTask(current)
    const by = standingSignOff(current)
    toast({
      text: by ? `${by.byName} did this at ${sayTime(by.doneAt, room)}. Nothing was booked for you.` : error.detail,
      action: { label: 'I did it too', run: () => post(true) },
    })
  }

  const post = (again: boolean) =>
    signOff.mutate(
      {
        task,
        // An answer may come much later than the tap.
        body: { values: {}, shownAmount: task.amount, again, doneAt: serverNow().toISOString() },
      },
      {
        onSuccess: (done) =>
          toast({
            text: `${verbDoneLabels[task.verb]}: ${task.subject.name}`,
            ...(isUndoable(done) ? { action: { label: 'Undo', run: undoNow } } : {}),
          }),
        onError: (error) => {
          if (isApiProblem(error) && error.code === 'already_done') tellWhoWasFaster(error)
          else toast({ text: sentenceOf(error) })
        },
      },
    )
  return { signOffNow: () => post(false), isBusy: signOff.isPending }
}
