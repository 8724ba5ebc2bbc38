import pg from 'pg'
import { roomChannel, sessionChannel } from './room-revision.ts'

export type RoomNotice = { roomId: string; revision: number }
export type RoomListener = { close: () => Promise<void> }

/**
 * Listens for rooms that have moved on, and for sessions that have ended. The connection is made again when it drops (half a second, doubling to ten);
 * `onReconnect` then tells the caller that notices may have been missed.
 */
export function listenToRooms(input: {
  connectionString: string
  onNotice: (notice: RoomNotice) => void
  onSessionEnded: () => void
  onReconnect: () => void
  onError: (error: unknown) => void
}): RoomListener {
  let client: pg.Client | undefined
  let isClosed = false
  let waitMs = 500
  let timer: NodeJS.Timeout | undefined

  const again = () => {
    if (isClosed) return
    timer = setTimeout(() => void connect(), waitMs)
    waitMs = Math.min(waitMs * 2, 10_000)
  }
  const connect = async () => {
    const next = new pg.Client({ connectionString: input.connectionString })
    client = next
    let isLost = false
    const lose = (error: unknown) => {
      if (isLost || isClosed) return
      isLost = true
      input.onError(error)
      next.end().catch(() => undefined)
      again()
    }
    next.on('error', lose)
    next.on('end', () => lose(new Error('The listening connection to PostgreSQL ended.')))
    next.on('notification', ({ channel, payload }) => {
      if (channel === sessionChannel) input.onSessionEnded()
      else input.onNotice(JSON.parse(payload ?? '{}'))
    })
    try {
      await next.connect()
      await next.query(`LISTEN ${roomChannel}; LISTEN ${sessionChannel}`)
      waitMs = 500
      input.onReconnect()
    } catch (error) {
      lose(error)
    }
  }
  void connect()
  return {
    close: async () => {
      isClosed = true
      clearTimeout(timer)
      await client?.end().catch(() => undefined)
    },
  }
}
