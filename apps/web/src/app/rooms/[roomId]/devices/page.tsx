import type { Metadata } from 'next'
import { DevicesPage } from '@/screens/devices/DevicesPage.tsx'

export const metadata: Metadata = { title: 'Devices' }

export default function Page() {
  return <DevicesPage />
}
