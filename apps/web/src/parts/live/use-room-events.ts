'use client'

import { addressOf, type Id, type RoomEvent, signedOutEvent } from '@fryward/shared'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { refreshRoom, roomKey, roomOptions } from '@/parts/rooms/queries.ts'
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
    // Where the session is over, that sends to sign in; what waits to be sent stays on the device.
    const askWhoIAm = () => void queryClient.invalidateQueries({ queryKey: meOptions().queryKey })
    const askForRoom = () => void queryClient.invalidateQueries({ queryKey: roomOptions(roomId).queryKey })
    const hear = (event: MessageEvent<string>) => {
      const { subjectIds } = JSON.parse(event.data) as RoomEvent
      void refreshRoom(queryClient, roomId, subjectIds)
    }
    const open = () => {
      source = new EventSource(addressOf('listenToRoom', { roomId }))
      source.onopen = () => {
        setConnection({ isLive: true })
        if (wasCut) refresh()
        wasCut = false
      }
      source.onmessage = hear
      source.addEventListener(signedOutEvent, () => {
        source?.close()
        askWhoIAm()
      })
      source.onerror = () => {
        wasCut = true
        setConnection((last) => (last.isLive ? { isLive: false, since: new Date() } : last))
        if (source?.readyState !== EventSource.CLOSED) return
        // Refused: perhaps the session ran out, or somebody took this person out of the room.
        askWhoIAm()
        askForRoom()
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
