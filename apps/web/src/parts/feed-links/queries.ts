import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const feedLinksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'feed-links'),
    queryFn: ({ signal }) => call('listFeedLinks', { params: { roomId }, signal }),
  })

export const useCreateFeedLink = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createFeedLink'>) => call('createFeedLink', { params: { roomId }, body }))

export const useEndFeedLink = (roomId: Id) =>
  useRoomWrite(roomId, ({ id, body }: { id: Id; body: BodyInputOf<'endFeedLink'> }) =>
    call('endFeedLink', { params: { roomId, feedLinkId: id }, body }),
  )
