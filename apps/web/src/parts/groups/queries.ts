import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const groupsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'groups'),
    queryFn: ({ signal }) => call('listJuvenileGroups', { params: { roomId }, signal }),
  })

export const useCreateGroup = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createJuvenileGroup'>) =>
    call('createJuvenileGroup', { params: { roomId }, body }),
  )

export const useChangeGroup = (roomId: Id, groupId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeJuvenileGroup'>) =>
    call('changeJuvenileGroup', { params: { roomId, groupId }, body }),
  )
