'use client'

import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { lazy, type MouseEvent, type ReactNode, Suspense } from 'react'
import { isApiProblem } from '@/base/api/problem.ts'
import { PersonProvider } from '@/base/room/person-context.tsx'
import { RoomProvider } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { ConnectionLine } from '@/parts/live/ConnectionLine.tsx'
import { OutboxPlace } from '@/parts/live/OutboxPlace.tsx'
import { useRoomEvents } from '@/parts/live/use-room-events.ts'
import { roomOptions } from '@/parts/rooms/queries.ts'
import { meOptions } from '@/parts/session/me.ts'
import { RoomNav } from './RoomNav.tsx'
import styles from './shell.module.css'

// Every page of a room brings this file along and hardly any shows it.
const NotInRoom = lazy(() => import('./NotInRoom.tsx').then((part) => ({ default: part.NotInRoom })))

/** Moves the focus only: an entry of the browser's own in the history would swallow the Back that closes a sheet. */
function skipToMain(event: MouseEvent): void {
  event.preventDefault()
  document.getElementById('main')?.focus()
}

/** The frame of every page of a room: navigation, the live connection, and the room itself for all below. */
export function RoomShell({ children }: { children: ReactNode }) {
  const { roomId } = useParams<{ roomId: string }>()
  const room = useQuery(roomOptions(roomId))
  const me = useQuery(meOptions())
  const connection = useRoomEvents(roomId)
  if (isApiProblem(room.error) && room.error.code === 'not_found')
    return (
      <Suspense>
        <NotInRoom name={room.data?.name} />
      </Suspense>
    )
  return (
    <div className={styles.shell}>
      {/* biome-ignore lint/a11y/useValidAnchor: it is a link to a place on this page, and works without script */}
      <a className={styles.skip} href="#main" onClick={skipToMain}>
        Skip to the page
      </a>
      <RoomNav roomId={roomId} room={room.data} />
      <main id="main" className={styles.main} tabIndex={-1}>
        <ConnectionLine connection={connection} voice={room.data} />
        <Loaded query={me} skeleton={<PageBones />} what="Your name">
          {({ user }) => (
            <PersonProvider value={user}>
              <Loaded query={room} skeleton={<PageBones />} what="The room">
                {(data) => (
                  <RoomProvider room={data}>
                    <OutboxPlace person={user} isLive={connection.isLive} />
                    {children}
                  </RoomProvider>
                )}
              </Loaded>
            </PersonProvider>
          )}
        </Loaded>
      </main>
    </div>
  )
}

const PageBones = () => <Bones heights={[3, 12, 12]} />
