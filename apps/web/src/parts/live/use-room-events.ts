'use client'

import { addressIn, firstRoutes, type Id, RoomEventSchema } from '@fryward/shared'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { refreshRoom, roomKey } from '@/parts/rooms/queries.ts'
import { meOptions } from '@/parts/session/me.ts'

export type Connection = { isLive: true } | { isLive: false; since: Date }

/** Wait before opening a stream again that the server refused outright; a dropped one the browser reopens itself. */
const reopenMs = 5_000

/**
 * Listens to what others do in the room and has the shown answers fetched again. The browser resumes a dropped stream
 * with Last-Event-ID; a stream that had to be opened anew may have missed something, so everything is fetched again.
 */
export function useRoomEvents(roomId: Id): Connection {
  const queryClient = useQueryClient()
  const [connection, setConnection] = useState<Connection>({ isLive: true })
  useEffect(() => {
    let source: EventSource | undefined
    let timer: number | undefined
    let wasCut = false
    const refresh = () => void queryClient.invalidateQueries({ queryKey: roomKey(roomId) })
    const hear = (event: MessageEvent<string>) => {
      const parsed = RoomEventSchema.safeParse(toJson(event.data))
      if (parsed.success) void refreshRoom(queryClient, roomId, parsed.data.subjectIds)
    }
    const open = () => {
      source = new EventSource(addressIn(firstRoutes.listenToRoom, { roomId }))
      source.onopen = () => {
        setConnection({ isLive: true })
        if (wasCut) refresh()
        wasCut = false
      }
      source.onmessage = hear
      source.onerror = () => {
        wasCut = true
        setConnection((last) => (last.isLive ? { isLive: false, since: new Date() } : last))
        if (source?.readyState !== EventSource.CLOSED) return
        // Refused: perhaps the session ran out; asking who I am sends to sign-in if so.
        void queryClient.invalidateQueries({ queryKey: meOptions().queryKey })
        timer = window.setTimeout(open, reopenMs)
      }
    }
    open()
    return () => {
      source?.close()
      window.clearTimeout(timer)
    }
  }, [queryClient, roomId])
  return connection
}

function toJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    // Not ours (a proxy's comment, say): the schema refuses it next.
    return undefined
  }
}
