import type { Room } from '@fryward/shared'
import { QueryClientProvider } from '@tanstack/react-query'
import { render } from '@testing-library/react'
import { userEvent } from '@testing-library/user-event'
import { AppRouterContext, type AppRouterInstance } from 'next/dist/shared/lib/app-router-context.shared-runtime.js'
import { PathParamsContext, SearchParamsContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime.js'
import type { ReactNode } from 'react'
import { makeQueryClient } from '@/base/api/query-client.ts'
import { PersonProvider } from '@/base/room/person-context.tsx'
import { RoomProvider } from '@/base/room/room-context.tsx'
import { Controls } from '@/base/ui/Controls.tsx'
import { ToastProvider } from '@/base/ui/toast.tsx'
import { makeRoom } from './made-up.ts'

/**
 * Around a piece of the dashboard what the page has around it; where it wants to go is noted instead of gone. `id` is that of
 * the thing whose page it is.
 */
export function renderInRoom(piece: ReactNode, { room = makeRoom(), id = '' }: { room?: Room; id?: string } = {}) {
  const went: string[] = []
  const note = (href: string) => void went.push(href)
  const router = {
    ...{ push: note, replace: note, prefetch: () => {}, back: () => {}, forward: () => {}, refresh: () => {} },
    ...{ hmrRefresh: () => {}, bfcacheId: 'made-up' },
  } satisfies AppRouterInstance
  const queryClient = makeQueryClient()
  const person = { id: 'carla', name: 'Carla' }
  const inRoom = (children: ReactNode) => (
    <AppRouterContext value={router}>
      <SearchParamsContext value={new URLSearchParams()}>
        <PathParamsContext value={{ roomId: room.id, id }}>
          <QueryClientProvider client={queryClient}>
            <ToastProvider>
              <Controls>
                <PersonProvider value={person}>
                  <RoomProvider room={room}>{children}</RoomProvider>
                </PersonProvider>
              </Controls>
            </ToastProvider>
          </QueryClientProvider>
        </PathParamsContext>
      </SearchParamsContext>
    </AppRouterContext>
  )
  const { rerender, unmount } = render(inRoom(piece))
  return {
    // No pause between keys: nothing here waits for one.
    user: userEvent.setup({ delay: null }),
    went,
    room,
    show: (next: ReactNode) => rerender(inRoom(next)),
    leave: unmount,
  }
}
