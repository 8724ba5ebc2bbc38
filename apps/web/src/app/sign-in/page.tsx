import type { Metadata } from 'next'
import { Suspense } from 'react'
import { SignInPage } from '@/screens/sign-in/SignInPage.tsx'

export const metadata: Metadata = { title: 'Sign in' }

export default function Page() {
  return (
    <Suspense>
      <SignInPage />
    </Suspense>
  )
}
