import type { Metadata } from 'next'
import { MorePage } from '@/screens/more/MorePage.tsx'

export const metadata: Metadata = { title: 'More' }

export default function Page() {
  return <MorePage />
}
