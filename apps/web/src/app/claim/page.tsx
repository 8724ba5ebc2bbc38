import type { Metadata } from 'next'
import { ClaimPage } from '@/screens/claim/ClaimPage.tsx'

export const metadata: Metadata = { title: 'First owner' }

export default function Page() {
  return <ClaimPage />
}
