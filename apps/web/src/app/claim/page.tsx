import type { Metadata } from 'next'
import { ClaimPage } from '@/features/session/ClaimPage.tsx'

export const metadata: Metadata = { title: 'First owner' }

export default function Page() {
  return <ClaimPage />
}
