import type { Metadata } from 'next'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { Nowhere } from '@/parts/doorway/Nowhere.tsx'

export const metadata: Metadata = { title: 'No such page' }

export default function NotFound() {
  return (
    <Doorway title="No such page">
      <Nowhere href="/rooms" label="Go to your rooms" />
    </Doorway>
  )
}
