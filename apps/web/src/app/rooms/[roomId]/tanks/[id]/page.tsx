import type { Metadata } from 'next'
import { TankPage } from '@/features/vessels/TankPage.tsx'

export const metadata: Metadata = { title: 'Tank' }

export default function Page() {
  return <TankPage />
}
