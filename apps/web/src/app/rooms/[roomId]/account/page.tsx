import type { Metadata } from 'next'
import { AccountPage } from '@/screens/account/AccountPage.tsx'

export const metadata: Metadata = { title: 'Your account' }

export default function Page() {
  return <AccountPage />
}
