import type { Metadata } from 'next'
import { CulturePage } from '@/screens/culture/CulturePage.tsx'

export const metadata: Metadata = { title: 'Culture' }

export default function Page() {
  return <CulturePage />
}
