import type { Metadata } from 'next'
import { BatchPage } from '@/screens/batch/BatchPage.tsx'

export const metadata: Metadata = { title: 'Larval batch' }

export default function Page() {
  return <BatchPage />
}
