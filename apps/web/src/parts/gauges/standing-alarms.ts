'use client'

import { useQuery } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { roomKey } from '@/parts/rooms/queries.ts'

/** Apart from all else that is asked of gauges, for Today brings it along. */
export function useStandingAlarms() {
  const { id: roomId } = useRoom()
  const { data = [] } = useQuery({
    queryKey: [...roomKey(roomId), 'alarms'],
    queryFn: ({ signal }) => call('listAlarms', { params: { roomId }, signal }),
  })
  return data.filter(({ clearedAt }) => clearedAt === null)
}
