import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const batchesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'batches'),
    queryFn: ({ signal }) => call('listLarvalBatches', { params: { roomId }, signal }),
  })

export const useCreateBatch = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createLarvalBatch', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangeBatch = (roomId: Id, batchId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeLarvalBatch', (body) => ({ params: { roomId, batchId }, body, ...typed }))
