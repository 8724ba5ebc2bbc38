import type { Metadata } from 'next'
import { RoomsPage } from '@/screens/rooms/RoomsPage.tsx'

export const metadata: Metadata = { title: 'Rooms' }

export default function Page() {
  return <RoomsPage />
}
