'use client'

import type { Task } from '@fryward/shared'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { sentenceOf } from '@/base/api/problem.ts'
import { serverNow } from '@/base/api/server-clock.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { untilLoaded } from '@/base/ui/until-loaded.ts'
import { usePreload } from '@/base/ui/use-preload.ts'
import { taskOptions, useShowTask, useSignOff, useUndo } from '@/parts/tasks/queries.ts'

const load = () => import('./sign-off-all.ts')

/** A stop's tasks as planned, and one message that takes all of them back. The script comes after the list. */
export function useAllAsPlanned() {
  const room = useRoom()
  const queryClient = useQueryClient()
  const signOff = useSignOff(room, true)
  const undo = useUndo(room, true)
  const showTask = useShowTask(room.id)
  const toast = useToast()
  const [isBusy, setBusy] = useState(false)
  usePreload(load)

  const undoAll = async (tasks: Task[]) => {
    try {
      for (const task of tasks.toReversed()) await undo.mutateAsync(task)
    } catch (error) {
      toast({ text: sentenceOf(error) })
    }
  }

  const run = async (tasks: Task[], stop: string) => {
    const { signOffAll } = await untilLoaded(load)
    const { done, said } = await signOffAll({
      ...{ tasks, stop, showTask },
      fetchTask: (taskId) => queryClient.fetchQuery({ ...taskOptions(room.id, taskId), staleTime: 0 }),
      signOff: (task) =>
        signOff.mutateAsync({
          task,
          body: { values: {}, shownAmount: task.amount, doneAt: serverNow().toISOString() },
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
