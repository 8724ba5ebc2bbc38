import type { Metadata } from 'next'
import { PedigreePage } from '@/screens/pedigree/PedigreePage.tsx'

export const metadata: Metadata = { title: 'Pedigree' }

export default function Page() {
  return <PedigreePage />
}
