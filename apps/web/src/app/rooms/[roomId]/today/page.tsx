import type { Metadata } from 'next'
import { TodayPage } from '@/features/today/TodayPage.tsx'

export const metadata: Metadata = { title: 'Today' }

export default function Page() {
  return <TodayPage />
}
