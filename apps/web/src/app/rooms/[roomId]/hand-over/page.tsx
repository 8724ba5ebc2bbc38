import type { Metadata } from 'next'
import { HandOverPage } from '@/screens/hand-over/HandOverPage.tsx'

export const metadata: Metadata = { title: 'Hand-over' }

export default function Page() {
  return <HandOverPage />
}
