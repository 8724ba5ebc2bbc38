'use client'

import type { Task } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import dynamic from 'next/dynamic'
import { useEffect } from 'react'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { taskOptions } from '@/features/today/queries.ts'
import { useOpenTaskId } from './open-task.ts'

const loadSheet = () => import('./TaskSheet.tsx')
const TaskSheet = dynamic(() => loadSheet().then((part) => part.TaskSheet), { ssr: false })

/** Long enough for the list to be on the screen, short enough to beat a thumb. */
const preloadAfterMs = 1_500

/** Where the open sheet hangs. Its script comes after the list, but before the network may be gone. */
export function TaskSheetPlace({ tasks, now }: { tasks: Task[]; now: Date }) {
  const room = useRoom()
  const taskId = useOpenTaskId()
  const listed = tasks.find((task) => task.id === taskId)
  const fetched = useQuery({ ...taskOptions(room.id, taskId ?? ''), enabled: taskId !== null && listed === undefined })
  useEffect(() => {
    // Without network it does not come; opening a sheet asks for it again and says so.
    const timer = window.setTimeout(() => loadSheet().catch(() => undefined), preloadAfterMs)
    return () => window.clearTimeout(timer)
  }, [])
  const task = listed ?? fetched.data
  if (taskId === null || !task || task.id !== taskId) return null
  return <TaskSheet key={task.id} task={task} now={now} />
}
