import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const pairsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'pairs'),
    queryFn: ({ signal }) => call('listPairs', { params: { roomId }, signal }),
  })

export const useCreatePair = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createPair'>) => call('createPair', { params: { roomId }, body }))

export const useChangePair = (roomId: Id, pairId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changePair'>) => call('changePair', { params: { roomId, pairId }, body }))
