'use client'

import { Nowhere } from '@/features/session/Nowhere.tsx'
import { Page } from '@/ui/Page.tsx'
import { useRoom } from './room-context.tsx'

/** No such page, with the room around it. */
export function NowherePage() {
  return (
    <Page title="No such page">
      <Nowhere href={`/rooms/${useRoom().id}/room`} label="To the room" />
    </Page>
  )
}
