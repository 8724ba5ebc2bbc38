import type { Metadata } from 'next'
import { RulesPage } from '@/features/rules/RulesPage.tsx'

export const metadata: Metadata = { title: 'Rules' }

export default function Page() {
  return <RulesPage />
}
