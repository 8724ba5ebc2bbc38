import type { Metadata } from 'next'
import { NewPasswordPage } from '@/screens/new-password/NewPasswordPage.tsx'

export const metadata: Metadata = { title: 'A new password' }

export default function Page() {
  return <NewPasswordPage />
}
