import type { Metadata } from 'next'
import { FoodPage } from '@/screens/food/FoodPage.tsx'

export const metadata: Metadata = { title: 'Food ahead' }

export default function Page() {
  return <FoodPage />
}
