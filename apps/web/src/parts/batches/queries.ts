import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const batchesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'batches'),
    queryFn: ({ signal }) => call('listLarvalBatches', { params: { roomId }, signal }),
  })

export const useCreateBatch = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createLarvalBatch'>) =>
    call('createLarvalBatch', { params: { roomId }, body }),
  )

export const useChangeBatch = (roomId: Id, batchId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeLarvalBatch'>) =>
    call('changeLarvalBatch', { params: { roomId, batchId }, body }),
  )
