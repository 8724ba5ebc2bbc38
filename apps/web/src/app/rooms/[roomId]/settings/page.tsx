import type { Metadata } from 'next'
import { SettingsPage } from '@/screens/settings/SettingsPage.tsx'

export const metadata: Metadata = { title: 'Settings' }

export default function Page() {
  return <SettingsPage />
}
