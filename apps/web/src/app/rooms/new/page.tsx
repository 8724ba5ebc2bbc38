import type { Metadata } from 'next'
import { NewRoomPage } from '@/screens/new-room/RoomWizard.tsx'

export const metadata: Metadata = { title: 'Set up a room' }

export default function Page() {
  return <NewRoomPage />
}
