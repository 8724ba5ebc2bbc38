import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, thingsKey, useRoomCommand } from '@/parts/rooms/queries.ts'

export const feedLinksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'feed-links'),
    queryFn: ({ signal }) => call('listFeedLinks', { params: { roomId }, signal }),
  })

export const feedsTodayOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'feeds-today'),
    queryFn: ({ signal }) => call('listFeedsToday', { params: { roomId }, signal }),
  })

export const useCreateFeedLink = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createFeedLink', (body) => ({ params: { roomId }, body, ...typed }))

export const useEndFeedLink = (roomId: Id) =>
  useRoomCommand(roomId, 'endFeedLink', ({ id, body }: { id: Id; body: BodyInputOf<'endFeedLink'> }) => ({
    params: { roomId, feedLinkId: id },
    body,
  }))
