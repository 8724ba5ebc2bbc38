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
  // Somebody else's tap may take the line off the list before the answer to this one has come.
  const signOff = useSignOff(room, true)
  const undo = useUndo(room, true)
  const showTask = useShowTask(room.id)
  const toast = useToast()
  const undoNow = () => undo.mutateAsync(task).catch((error: unknown) => toast({ text: sentenceOf(error) }))

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

  const offerUndo = (done: Task) => {
    const text = `${verbDoneLabels[task.verb]}: ${task.subject.name}`
    toast({ text, ...(isUndoable(done) ? { action: { label: 'Undo', run: undoNow } } : {}) })
  }

  const tellHow = (error: unknown) => {
    if (isApiProblem(error) && error.code === 'already_done') tellWhoWasFaster(error)
    else toast({ text: sentenceOf(error) })
  }

  const post = (again: boolean) => {
    // An answer may come much later than the tap.
    const body = { values: {}, shownAmount: task.amount, again, doneAt: serverNow().toISOString() }
    void signOff.mutateAsync({ task, body }).then(offerUndo, tellHow)
  }
  return { signOffNow: () => post(false), isBusy: signOff.isPending }
}
