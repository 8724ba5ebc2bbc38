import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const tanksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'tanks'),
    queryFn: ({ signal }) => call('listTanks', { params: { roomId }, signal }),
  })

export const useCreateTank = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createTank', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangeTank = (roomId: Id, tankId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeTank', (body) => ({ params: { roomId, tankId }, body, ...typed }))
