import type { Metadata } from 'next'
import { GroupPage } from '@/screens/group/GroupPage.tsx'

export const metadata: Metadata = { title: 'Juvenile group' }

export default function Page() {
  return <GroupPage />
}
