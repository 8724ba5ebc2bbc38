import type { Metadata } from 'next'
import { ClutchPage } from '@/features/clutches/ClutchPage.tsx'

export const metadata: Metadata = { title: 'Clutch' }

export default function Page() {
  return <ClutchPage />
}
