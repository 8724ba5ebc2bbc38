import type { Metadata } from 'next'
import { BatchPage } from '@/features/vessels/BatchPage.tsx'

export const metadata: Metadata = { title: 'Larval batch' }

export default function Page() {
  return <BatchPage />
}
