'use client'

import { type Permission, permissionsOfRole, type Room } from '@fryward/shared'
import type { Voice } from '@fryward/words'
import { createContext, type ReactNode, useContext } from 'react'
import { deviceVoice } from './device-voice.ts'

const RoomContext = createContext<Room | null>(null)
const VoiceContext = createContext<Voice | null>(null)

export function RoomProvider({ room, children }: { room: Room; children: ReactNode }) {
  return (
    <RoomContext value={room}>
      <VoiceContext value={room}>{children}</VoiceContext>
    </RoomContext>
  )
}

/** For a form that chooses the voice: its own boxes follow the choice. */
export function VoiceProvider({ voice, children }: { voice: Voice; children: ReactNode }) {
  return <VoiceContext value={voice}>{children}</VoiceContext>
}

export function useRoom(): Room {
  const room = useContext(RoomContext)
  if (room === null) throw new Error('useRoom is for pages of a room')
  return room
}

/** The room a page is of; undefined outside one. */
export const useRoomId = (): string | undefined => useContext(RoomContext)?.id

/** How this room is spoken to. Outside a room, as the device writes numbers and dates, in metric. */
export const useVoice = (): Voice => useContext(VoiceContext) ?? deviceVoice()

/** What the signed-in person may do here; a page hides what it would be refused, the API decides. */
export function useMay(permission: Permission): boolean {
  const allowed: readonly Permission[] = permissionsOfRole[useRoom().myRole]
  return allowed.includes(permission)
}
