import type { Metadata } from 'next'
import { RoomWizard } from '@/features/rooms/wizard/RoomWizard.tsx'

export const metadata: Metadata = { title: 'Set up a room' }

export default function Page() {
  return <RoomWizard />
}
