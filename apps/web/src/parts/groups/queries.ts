import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const groupsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'groups'),
    queryFn: ({ signal }) => call('listJuvenileGroups', { params: { roomId }, signal }),
  })

export const useCreateGroup = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createJuvenileGroup', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangeGroup = (roomId: Id, groupId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeJuvenileGroup', (body) => ({ params: { roomId, groupId }, body, ...typed }))
