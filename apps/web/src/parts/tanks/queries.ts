import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const tanksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'tanks'),
    queryFn: ({ signal }) => call('listTanks', { params: { roomId }, signal }),
  })

export const useCreateTank = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createTank'>) => call('createTank', { params: { roomId }, body }))

export const useChangeTank = (roomId: Id, tankId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeTank'>) => call('changeTank', { params: { roomId, tankId }, body }))
