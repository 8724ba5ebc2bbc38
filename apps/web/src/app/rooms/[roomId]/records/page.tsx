import type { Metadata } from 'next'
import { RecordsPage } from '@/screens/records/RecordsPage.tsx'

export const metadata: Metadata = { title: 'Records in and out' }

export default function Page() {
  return <RecordsPage />
}
