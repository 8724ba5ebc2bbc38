import type { Metadata } from 'next'
import { PeoplePage } from '@/screens/people/PeoplePage.tsx'

export const metadata: Metadata = { title: 'People' }

export default function Page() {
  return <PeoplePage />
}
