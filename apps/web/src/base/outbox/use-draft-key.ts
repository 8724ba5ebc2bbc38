'use client'

import { usePerson } from '@/base/room/person-context.tsx'
import { useRoomId } from '@/base/room/room-context.tsx'

/**
 * A form's place among the drafts: of one person, in one room, about one thing. Undefined where nobody is signed in or
 * nothing is to be kept.
 */
export function useDraftKey(what: string | undefined): string | undefined {
  const person = usePerson()
  const roomId = useRoomId()
  return person === null || what === undefined ? undefined : `${person.id}/${roomId ?? ''}/${what}`
}
