import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const pairsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'pairs'),
    queryFn: ({ signal }) => call('listPairs', { params: { roomId }, signal }),
  })

export const useCreatePair = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createPair', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangePair = (roomId: Id, pairId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changePair', (body) => ({ params: { roomId, pairId }, body, ...typed }))
