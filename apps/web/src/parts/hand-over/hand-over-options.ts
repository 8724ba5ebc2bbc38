import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey } from '@/parts/rooms/queries.ts'

/** Apart from what is written to the hand-over, for Today brings it along. */
export const handOverOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'hand-over'],
    queryFn: ({ signal }) => call('getHandOver', { params: { roomId }, signal }),
  })
