'use client'

import type { Task } from '@fryward/shared'
import { useRef } from 'react'
import { isApiProblem, sentenceOf } from '@/api/problem.ts'
import { makeRequestKey } from '@/api/request-key.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { useOpenTask } from '@/features/task-sheet/open-task.ts'
import { useToast } from '@/ui/toast.tsx'
import { verbDoneLabels } from '@/words/labels.ts'
import { useSignOff, useUndo } from './queries.ts'

/** Signs a task off as it stands on the screen, offers the undo, and says so when somebody was faster. */
export function useOneTap(task: Task) {
  const room = useRoom()
  const signOff = useSignOff(room.id)
  const undo = useUndo(room.id)
  const toast = useToast()
  const openTask = useOpenTask()
  // One key until it has worked, so that a tap repeated after a lost answer books once.
  const requestKey = useRef(makeRequestKey())
  const undoNow = () => undo.mutate(task.id, { onError: (error) => toast({ text: sentenceOf(error) }) })
  const signOffNow = () =>
    signOff.mutate(
      { taskId: task.id, body: { values: {}, shownAmount: task.amount }, requestKey: requestKey.current },
      {
        onSuccess: () => {
          requestKey.current = makeRequestKey()
          toast({
            text: `${verbDoneLabels[task.verb]}: ${task.subject.name}`,
            action: { label: 'Undo', run: undoNow },
          })
        },
        onError: (error) => {
          if (!isApiProblem(error) || error.code !== 'offline') requestKey.current = makeRequestKey()
          if (isApiProblem(error) && error.code === 'already_done') openTask(task.id)
          else toast({ text: sentenceOf(error) })
        },
      },
    )
  return { signOffNow, isBusy: signOff.isPending }
}
