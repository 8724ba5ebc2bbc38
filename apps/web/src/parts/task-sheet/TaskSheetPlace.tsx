'use client'

import type { Task } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { Suspense } from 'react'
import { useRoom } from '@/base/room/room-context.tsx'
import { inSteps } from '@/base/ui/in-steps.ts'
import { late } from '@/base/ui/late.ts'
import { usePreload } from '@/base/ui/use-preload.ts'
import { useOpenTaskId } from '@/parts/tasks/open-task.ts'
import { taskOptions } from '@/parts/tasks/queries.ts'

const pieces = [
  () => import('@/base/dates/local-time.ts'),
  () => import('@/base/ui/Controls.tsx'),
  () => import('./SheetFrame.tsx'),
  () => import('./SignOffForm.tsx'),
]
const loadSheet = inSteps(pieces, () => import('./TaskSheet.tsx'))
const TaskSheet = late(loadSheet, 'TaskSheet')

/** Where the open sheet hangs. Its script comes after the list, but before the network may be gone. */
export function TaskSheetPlace({ tasks, now }: { tasks: Task[]; now: Date }) {
  const room = useRoom()
  const taskId = useOpenTaskId()
  const listed = tasks.find((task) => task.id === taskId)
  const fetched = useQuery({ ...taskOptions(room.id, taskId ?? ''), enabled: taskId !== null && listed === undefined })
  usePreload(loadSheet)
  const task = listed ?? fetched.data
  if (taskId === null || !task || task.id !== taskId) return null
  return (
    <Suspense>
      <TaskSheet key={task.id} task={task} now={now} />
    </Suspense>
  )
}
