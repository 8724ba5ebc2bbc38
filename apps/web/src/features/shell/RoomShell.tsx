'use client'

import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import type { ReactNode } from 'react'
import { ConnectionLine } from '@/features/live/ConnectionLine.tsx'
import { useRoomEvents } from '@/features/live/use-room-events.ts'
import { roomOptions } from '@/features/rooms/queries.ts'
import { RoomProvider } from '@/features/rooms/room-context.tsx'
import { Bones } from '@/ui/Bones.tsx'
import { Loaded } from '@/ui/Loaded.tsx'
import { RoomNav } from './RoomNav.tsx'
import styles from './shell.module.css'

/** The frame of every page of a room: navigation, the live connection, and the room itself for all below. */
export function RoomShell({ children }: { children: ReactNode }) {
  const { roomId } = useParams<{ roomId: string }>()
  const room = useQuery(roomOptions(roomId))
  const connection = useRoomEvents(roomId)
  return (
    <div className={styles.shell}>
      <a className={styles.skip} href="#main">
        Skip to the page
      </a>
      <RoomNav roomId={roomId} room={room.data} />
      <main id="main" className={styles.main} tabIndex={-1}>
        <ConnectionLine connection={connection} timeZone={room.data?.timeZone} />
        <Loaded query={room} skeleton={<Bones heights={[3, 12, 12]} />} what="The room">
          {(data) => <RoomProvider room={data}>{children}</RoomProvider>}
        </Loaded>
      </main>
    </div>
  )
}
