import type { Metadata } from 'next'
import { SurvivalPage } from '@/screens/survival/SurvivalPage.tsx'

export const metadata: Metadata = { title: 'Survival' }

export default function Page() {
  return <SurvivalPage />
}
