'use client'

import { Suspense } from 'react'
import { late } from '@/base/ui/late.ts'
import { useStandingAlarms } from './standing-alarms.ts'

// Most days nothing stands, and Today would bring it along.
const AlarmCard = late(() => import('./AlarmCard.tsx'), 'AlarmCard')

/** What stands. */
export function Alarms() {
  return (
    <Suspense>
      {useStandingAlarms().map((alarm) => (
        <AlarmCard key={alarm.id} alarm={alarm} />
      ))}
    </Suspense>
  )
}
