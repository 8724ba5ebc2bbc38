import type { Metadata } from 'next'
import { AddPage } from '@/screens/add/AddPage.tsx'

export const metadata: Metadata = { title: 'Add' }

export default function Page() {
  return <AddPage />
}
