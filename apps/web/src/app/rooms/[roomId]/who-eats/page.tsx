import type { Metadata } from 'next'
import { WhoEatsPage } from '@/screens/who-eats/WhoEatsPage.tsx'

export const metadata: Metadata = { title: 'Who eats from what' }

export default function Page() {
  return <WhoEatsPage />
}
