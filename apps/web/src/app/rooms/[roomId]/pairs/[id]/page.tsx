import type { Metadata } from 'next'
import { PairPage } from '@/screens/pair/PairPage.tsx'

export const metadata: Metadata = { title: 'Pair' }

export default function Page() {
  return <PairPage />
}
