import type { BodyInputOf, Day, Id, PlainDate, Task } from '@fryward/shared'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { untilAnswered } from '@/parts/live/waiting.ts'
import { refreshRoom, roomKey } from '@/parts/rooms/queries.ts'

export type DayName = PlainDate | 'today' | 'tomorrow'

const dayKey = (roomId: Id) => [...roomKey(roomId), 'day'] as const

export const dayOptions = (roomId: Id, date: DayName) =>
  queryOptions({
    queryKey: [...dayKey(roomId), date],
    queryFn: ({ signal }) => call('getDay', { params: { roomId, date }, signal }),
  })

export const taskOptions = (roomId: Id, taskId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'task', taskId],
    queryFn: ({ signal }) => call('getTask', { params: { roomId, taskId }, signal }),
  })

const withTask = (day: Day | undefined, task: Task): Day | undefined =>
  day && { ...day, tasks: day.tasks.map((one) => (one.id === task.id ? task : one)) }

/** The answer goes straight into the shown list; the rest of the room is fetched again behind it. */
function useTakeTask(roomId: Id) {
  const queryClient = useQueryClient()
  return {
    onSuccess: (task: Task) => {
      queryClient.setQueriesData<Day>({ queryKey: dayKey(roomId) }, (day) => withTask(day, task))
      queryClient.setQueryData(taskOptions(roomId, task.id).queryKey, task)
    },
    onSettled: () => void refreshRoom(queryClient, roomId, []),
  }
}

/** Puts what the API said a task is now into the shown lists. */
export function useShowTask(roomId: Id) {
  const { onSuccess } = useTakeTask(roomId)
  return onSuccess
}

/** Says who has the room on a day: a person, or nobody any more. */
export function useTakeDuty(roomId: Id, date: PlainDate) {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (userId: string | null) => call('takeDuty', { params: { roomId, date }, body: { userId } }),
    onSuccess: ({ onDuty }) =>
      queryClient.setQueriesData<Day>({ queryKey: dayKey(roomId) }, (day) =>
        day?.date === date ? { ...day, onDuty } : day,
      ),
  })
}

type Keyed<B> = { taskId: Id; body: B; requestKey: string }

/** @param onAnswer told of the answer even when the component that asked has gone meanwhile. */
export function useSignOff(roomId: Id, onAnswer?: (taskId: Id, error: unknown) => void) {
  const { onSuccess, onSettled } = useTakeTask(roomId)
  return useMutation({
    ...untilAnswered(roomId),
    mutationFn: ({ taskId, body, requestKey }: Keyed<BodyInputOf<'signOffTask'>>) =>
      call('signOffTask', { params: { roomId, taskId }, body, requestKey }),
    onSuccess,
    onSettled: (_task, error, { taskId }) => {
      onAnswer?.(taskId, error)
      onSettled()
    },
  })
}

export function useSkip(roomId: Id) {
  return useMutation({
    mutationFn: ({ taskId, body, requestKey }: Keyed<BodyInputOf<'skipTask'>>) =>
      call('skipTask', { params: { roomId, taskId }, body, requestKey }),
    ...useTakeTask(roomId),
  })
}

export function useUndo(roomId: Id) {
  return useMutation({
    mutationFn: (taskId: Id) => call('undoTask', { params: { roomId, taskId }, body: {} }),
    ...useTakeTask(roomId),
  })
}
