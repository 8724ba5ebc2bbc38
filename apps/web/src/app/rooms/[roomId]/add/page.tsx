import type { Metadata } from 'next'
import { AddPage } from '@/features/add/AddPage.tsx'

export const metadata: Metadata = { title: 'Add' }

export default function Page() {
  return <AddPage />
}
