'use client'

import { useRoom } from '@/base/room/room-context.tsx'
import { Page } from '@/base/ui/Page.tsx'
import { Nowhere } from '@/parts/doorway/Nowhere.tsx'

/** No such page, with the room around it. */
export function NowherePage() {
  return (
    <Page title="No such page">
      <Nowhere href={`/rooms/${useRoom().id}/room`} label="To the room" />
    </Page>
  )
}
