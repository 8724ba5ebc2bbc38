import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const clutchesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'clutches'),
    queryFn: ({ signal }) => call('listClutches', { params: { roomId }, signal }),
  })

export const useCreateClutch = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createClutch'>) => call('createClutch', { params: { roomId }, body }))

export const useChangeClutch = (roomId: Id, clutchId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeClutch'>) =>
    call('changeClutch', { params: { roomId, clutchId }, body }),
  )
