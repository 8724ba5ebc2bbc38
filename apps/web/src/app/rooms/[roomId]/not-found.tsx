'use client'

import { lazy, Suspense } from 'react'

// Every page of a room brings this file along and hardly any shows it.
const NowherePage = lazy(() =>
  import('@/screens/nowhere/NowherePage.tsx').then((part) => ({ default: part.NowherePage })),
)

export default function NotFound() {
  return (
    <Suspense>
      <NowherePage />
    </Suspense>
  )
}
