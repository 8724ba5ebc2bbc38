'use client'

import type { Id, Task } from '@fryward/shared'
import { useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import { sentenceOf } from '@/base/api/problem.ts'
import { serverNow } from '@/base/api/server-clock.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { usePreload } from '@/base/ui/use-preload.ts'
import { taskOptions, useShowTask, useSignOff, useUndo } from '@/parts/tasks/queries.ts'

const load = () => import('./sign-off-all.ts')

/** A stop's tasks as planned, and one message that takes all of them back. The script comes after the list. */
export function useAllAsPlanned() {
  const { id: roomId } = useRoom()
  const queryClient = useQueryClient()
  const signOff = useSignOff(roomId)
  const undo = useUndo(roomId)
  const showTask = useShowTask(roomId)
  const toast = useToast()
  const [isBusy, setBusy] = useState(false)
  const keys = useRef(new Map<Id, string>())
  usePreload(load)

  const undoAll = async (tasks: Task[]) => {
    try {
      for (const task of tasks.toReversed()) await undo.mutateAsync(task.id)
    } catch (error) {
      toast({ text: sentenceOf(error) })
    }
  }

  const run = async (tasks: Task[], stop: string) => {
    const { signOffAll } = await load()
    const { done, said } = await signOffAll({
      ...{ tasks, stop, showTask, keys: keys.current },
      fetchTask: (taskId) => queryClient.fetchQuery({ ...taskOptions(roomId, taskId), staleTime: 0 }),
      signOff: (task, requestKey) =>
        signOff.mutateAsync({
          taskId: task.id,
          body: { values: {}, shownAmount: task.amount, doneAt: serverNow().toISOString() },
          requestKey,
        }),
    })
    const action = { label: `Undo all ${done.length}`, run: () => void undoAll(done) }
    toast({ text: said, action: done.length > 0 ? action : undefined })
    return done.length === tasks.length
  }

  /** @returns whether nothing of it is left open. */
  const signOffAsPlanned = async (tasks: Task[], stop: string): Promise<boolean> => {
    setBusy(true)
    try {
      return await run(tasks, stop)
    } catch (error) {
      toast({ text: sentenceOf(error) })
      return false
    } finally {
      setBusy(false)
    }
  }
  return { signOffAsPlanned, isBusy }
}
