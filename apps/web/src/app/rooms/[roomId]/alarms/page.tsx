import type { Metadata } from 'next'
import { AlarmsPage } from '@/screens/alarms/AlarmsPage.tsx'

export const metadata: Metadata = { title: 'Alarms' }

export default function Page() {
  return <AlarmsPage />
}
