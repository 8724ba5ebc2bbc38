import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const clutchesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'clutches'),
    queryFn: ({ signal }) => call('listClutches', { params: { roomId }, signal }),
  })

export const useCreateClutch = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createClutch', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangeClutch = (roomId: Id, clutchId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeClutch', (body) => ({ params: { roomId, clutchId }, body, ...typed }))
