import type { Metadata } from 'next'
import { RulesPage } from '@/screens/rules/RulesPage.tsx'

export const metadata: Metadata = { title: 'Rules' }

export default function Page() {
  return <RulesPage />
}
