import type { Metadata } from 'next'
import { RoomWizard } from '@/screens/new-room/RoomWizard.tsx'

export const metadata: Metadata = { title: 'Set up a room' }

export default function Page() {
  return <RoomWizard />
}
