'use client'

import { Suspense } from 'react'
import { late } from '@/base/ui/late.ts'
import { usePreload } from '@/base/ui/use-preload.ts'
import { useStandingAlarms } from './standing-alarms.ts'

// Most days nothing stands, and Today would bring it along; but an alarm must not wait for a weak network.
const loadCard = () => import('./AlarmCard.tsx')
const AlarmCard = late(loadCard, 'AlarmCard')

/** What stands. */
export function Alarms() {
  usePreload(loadCard)
  return (
    <Suspense>
      {useStandingAlarms().map((alarm) => (
        <AlarmCard key={alarm.id} alarm={alarm} />
      ))}
    </Suspense>
  )
}
