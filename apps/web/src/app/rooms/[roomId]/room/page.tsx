import type { Metadata } from 'next'
import { RoomPage } from '@/features/vessels/RoomPage.tsx'

export const metadata: Metadata = { title: 'Room' }

export default function Page() {
  return <RoomPage />
}
