'use client'

import { type Permission, permissionsOfRole, type Room, type UnitSystem } from '@fryward/shared'
import { createContext, type ReactNode, useContext } from 'react'

const RoomContext = createContext<Room | null>(null)

export function RoomProvider({ room, children }: { room: Room; children: ReactNode }) {
  return <RoomContext value={room}>{children}</RoomContext>
}

export function useRoom(): Room {
  const room = useContext(RoomContext)
  if (room === null) throw new Error('useRoom is for pages of a room')
  return room
}

/** Outside a room (the wizard chooses its own) amounts are metric. */
export const useUnitSystem = (): UnitSystem => useContext(RoomContext)?.units ?? 'metric'

/** What the signed-in person may do here; a page hides what it would be refused, the API decides. */
export function useMay(permission: Permission): boolean {
  const allowed: readonly Permission[] = permissionsOfRole[useRoom().myRole]
  return allowed.includes(permission)
}
