import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { outlookPart, roomKey, type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'
import { usualDensities } from './density-fill.ts'

/** What is usual changes over weeks: one look an hour is enough, and no event asks for another. */
const usualStaleMs = 3_600_000
/** Enough for some weeks of a room with a handful of cultures. */
const usualCounts = 300

export const culturesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'cultures'),
    queryFn: ({ signal }) => call('listCultures', { params: { roomId }, signal }),
  })

export const outlookOptions = (roomId: Id, cultureId: Id, query: { harvestShare?: number; days?: number } = {}) =>
  queryOptions({
    queryKey: [...roomKey(roomId), outlookPart, cultureId, query],
    queryFn: ({ signal }) => call('getCultureOutlook', { params: { roomId, cultureId }, query, signal }),
  })

/** What each culture of the room usually stands at, per mL, from its last counts. */
export const usualDensitiesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: ['usual-densities', roomId],
    queryFn: async ({ signal }) => {
      const page = await call('listFacts', { params: { roomId }, query: { kind: 'count', limit: usualCounts }, signal })
      return usualDensities(page.facts)
    },
    staleTime: usualStaleMs,
  })

export const useCreateCulture = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createCulture', (body) => ({ params: { roomId }, body, ...typed }))

export const useChangeCulture = (roomId: Id, cultureId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeCulture', (body) => ({ params: { roomId, cultureId }, body, ...typed }))
