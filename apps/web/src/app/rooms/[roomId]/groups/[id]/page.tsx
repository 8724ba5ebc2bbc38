import type { Metadata } from 'next'
import { GroupPage } from '@/features/vessels/GroupPage.tsx'

export const metadata: Metadata = { title: 'Juvenile group' }

export default function Page() {
  return <GroupPage />
}
