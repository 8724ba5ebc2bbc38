import type { Metadata } from 'next'
import { TankPage } from '@/screens/tank/TankPage.tsx'

export const metadata: Metadata = { title: 'Tank' }

export default function Page() {
  return <TankPage />
}
