'use client'

import type { Id } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { Suspense } from 'react'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { late } from '@/base/ui/late.ts'
import { handOverOptions } from './hand-over-options.ts'

// Most days have none, and Today would bring it along.
const WorryList = late(() => import('./WorryList.tsx'), 'WorryList')

/** Worries that nobody has said to be over: of the whole room, or those about one thing of it. */
export function OpenWorries({ subjectId }: { subjectId?: Id }) {
  const query = useQuery(handOverOptions(useRoom().id))
  const now = useServerNow(query.dataUpdatedAt)
  const worries =
    query.data?.worries.filter(({ subject }) => subjectId === undefined || subject?.id === subjectId) ?? []
  return <Suspense>{worries.length > 0 && <WorryList worries={worries} now={now} />}</Suspense>
}
