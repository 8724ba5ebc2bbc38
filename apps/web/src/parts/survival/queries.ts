import { addressOf, type Id, type QueryOf } from '@fryward/shared'
import { keepPreviousData, queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey } from '@/parts/rooms/queries.ts'

const part = 'survival'
type Range = QueryOf<'getSurvival'>

export const survivalOptions = (roomId: Id, range: Range) =>
  queryOptions({
    queryKey: [...roomKey(roomId), part, 'review', range],
    queryFn: ({ signal }) => call('getSurvival', { params: { roomId }, query: range, signal }),
    placeholderData: keepPreviousData,
  })

export const comparisonOptions = (roomId: Id, query: QueryOf<'compareSurvival'>) =>
  queryOptions({
    queryKey: [...roomKey(roomId), part, 'comparison', query],
    queryFn: ({ signal }) => call('compareSurvival', { params: { roomId }, query, signal }),
    placeholderData: keepPreviousData,
  })

export const clutchLifeOptions = (roomId: Id, clutchId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), part, 'life', clutchId],
    queryFn: ({ signal }) => call('getClutchLife', { params: { roomId, clutchId }, signal }),
  })

/** Address of the review as a file; a plain link, so that the browser saves it. */
export function survivalFileAddress(roomId: Id, query: Partial<QueryOf<'downloadSurvival'>>): string {
  const pairs = Object.entries(query).filter(([, value]) => value !== undefined)
  return `${addressOf('downloadSurvival', { roomId })}?${new URLSearchParams(pairs).toString()}`
}
