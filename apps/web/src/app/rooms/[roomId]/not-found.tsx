'use client'

import { later } from '@/ui/later.tsx'

// Every page of a room brings this file along and hardly any shows it.
const NowherePage = later(() => import('@/features/rooms/NowherePage.tsx').then((part) => part.NowherePage))

export default function NotFound() {
  return <NowherePage />
}
