import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const concentratesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'concentrates'),
    queryFn: ({ signal }) => call('listConcentrates', { params: { roomId }, signal }),
  })

export const useCreateConcentrate = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createConcentrate', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangeConcentrate = (roomId: Id) =>
  useRoomCommand(roomId, 'changeConcentrate', ({ id, body }: { id: Id; body: BodyInputOf<'changeConcentrate'> }) => ({
    params: { roomId, concentrateId: id },
    body,
  }))
