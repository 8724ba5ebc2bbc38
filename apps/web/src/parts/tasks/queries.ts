import type { BodyInputOf, Day, Id, PlainDate, Room, Task } from '@fryward/shared'
import { sayWholeTitle } from '@fryward/words'
import { queryOptions, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { useCommand } from '@/base/outbox/use-command.ts'
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

export const whyOptions = (roomId: Id, taskId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'task', taskId, 'why'],
    queryFn: ({ signal }) => call('getTaskWhy', { params: { roomId, taskId }, signal }),
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
  return useCommand('takeDuty', (userId: string | null) => ({ params: { roomId, date }, body: { userId } }), {
    onSuccess: ({ onDuty }) =>
      queryClient.setQueriesData<Day>({ queryKey: dayKey(roomId) }, (day) =>
        day?.date === date ? { ...day, onDuty } : day,
      ),
  })
}

type Said<B> = { task: Task; body: B; draftKey?: string | undefined }

/** The way back to a task: its words, and the list with its sheet open. */
const wayTo = (room: Room, task: Task) => ({
  about: sayWholeTitle(task.title, task.subject, room),
  path: `/rooms/${room.id}/today?task=${task.id}`,
})

/** @param isHeardAfter whether the answer is taken from its promise (`mutateAsync`), where the line may go before it comes. */
export function useSignOff(room: Room, isHeardAfter = false) {
  const mean = ({ task, body, draftKey }: Said<BodyInputOf<'signOffTask'>>) => ({
    ...{ params: { roomId: room.id, taskId: task.id }, body, draftKey },
    ...wayTo(room, task),
  })
  return useCommand('signOffTask', mean, { ...useTakeTask(room.id), isHeardAfter })
}

export function useSkip(room: Room) {
  const mean = ({ task, body, draftKey }: Said<BodyInputOf<'skipTask'>>) => ({
    ...{ params: { roomId: room.id, taskId: task.id }, body, draftKey },
    ...wayTo(room, task),
  })
  return useCommand('skipTask', mean, useTakeTask(room.id))
}

export function useUndo(room: Room, isHeardAfter = false) {
  const mean = (task: Task) => ({
    ...{ params: { roomId: room.id, taskId: task.id }, body: {} },
    ...wayTo(room, task),
  })
  return useCommand('undoTask', mean, { ...useTakeTask(room.id), isHeardAfter })
}
