import type { Metadata } from 'next'
import { TodayPage } from '@/screens/today/TodayPage.tsx'

export const metadata: Metadata = { title: 'Today' }

export default function Page() {
  return <TodayPage />
}
