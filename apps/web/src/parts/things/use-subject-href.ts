'use client'

import type { Id } from '@fryward/shared'
import { useRoom } from '@/base/room/room-context.tsx'
import { hrefOf } from './href.ts'
import { useFindThing } from './use-things.ts'

/** Where a setting or a fact is to be seen: the page of its thing; the room's settings when it belongs to the room. */
export function useSubjectHref(): (subjectId: Id | null) => string | undefined {
  const room = useRoom()
  const find = useFindThing()
  return (subjectId) => {
    if (subjectId === null || subjectId === room.id) return `/rooms/${room.id}/settings`
    const thing = find(subjectId)
    return thing && hrefOf(room.id, thing)
  }
}
