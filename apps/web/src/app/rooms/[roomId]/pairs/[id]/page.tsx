import type { Metadata } from 'next'
import { PairPage } from '@/features/vessels/PairPage.tsx'

export const metadata: Metadata = { title: 'Pair' }

export default function Page() {
  return <PairPage />
}
