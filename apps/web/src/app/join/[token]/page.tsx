import type { Metadata } from 'next'
import { JoinPage } from '@/screens/join/JoinPage.tsx'

export const metadata: Metadata = { title: 'Join a room' }

export default function Page() {
  return <JoinPage />
}
