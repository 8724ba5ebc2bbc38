import type { Id, QueryOf } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey } from '@/parts/rooms/queries.ts'

export const pedigreeOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'pedigree'],
    queryFn: ({ signal }) => call('getPedigree', { params: { roomId }, signal }),
  })

export const pairToBeOptions = (roomId: Id, query: QueryOf<'getPairToBe'>) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'pair to be', query],
    queryFn: ({ signal }) => call('getPairToBe', { params: { roomId }, query, signal }),
  })
