'use client'

import type { HarvestDestination, Id } from '@fryward/shared'
import { destinationLabels } from '@fryward/words'
import { useThings } from './use-things.ts'

export type Destination = { key: string; to: HarvestDestination; subjectId: Id | undefined; name: string }

const fixed: HarvestDestination[] = ['other_fish', 'chilled_reserve', 'drain']

/** Everywhere a harvest of this room can go. */
export function useDestinations(): Destination[] {
  const { batches, cultures } = useThings()
  return [
    ...batches
      .filter((batch) => batch.endedAt === null)
      .map((batch) => ({ key: batch.id, to: 'larval_batch' as const, subjectId: batch.id, name: batch.name })),
    ...cultures
      .filter((culture) => culture.endedAt === null)
      .map((culture) => ({ key: culture.id, to: 'culture' as const, subjectId: culture.id, name: culture.name })),
    ...fixed.map((to) => ({ key: to, to, subjectId: undefined, name: destinationLabels[to].toLowerCase() })),
  ]
}
