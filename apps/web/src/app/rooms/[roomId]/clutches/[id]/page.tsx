import type { Metadata } from 'next'
import { ClutchPage } from '@/screens/clutch/ClutchPage.tsx'

export const metadata: Metadata = { title: 'Clutch' }

export default function Page() {
  return <ClutchPage />
}
