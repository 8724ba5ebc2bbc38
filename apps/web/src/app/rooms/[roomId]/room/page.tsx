import type { Metadata } from 'next'
import { RoomPage } from '@/screens/room/RoomPage.tsx'

export const metadata: Metadata = { title: 'Room' }

export default function Page() {
  return <RoomPage />
}
