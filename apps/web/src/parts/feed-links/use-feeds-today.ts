import type { Food, Id } from '@fryward/shared'
import { foodLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { feedsTodayOptions } from './queries.ts'

export type Of = { batchId: Id } | { cultureId: Id }

/** What is eaten today, by the other side's id: of which culture or cone, or by which batch. Linked or not, of any live food. */
export function useFeedsToday(of: Of) {
  const feeds = useQuery(feedsTodayOptions(useRoom().id))
  const own = new Map<Id, Food[]>()
  for (const { batchId, cultureId, food } of feeds.data ?? []) {
    const isOwn = 'batchId' in of ? batchId === of.batchId : cultureId === of.cultureId
    const other = 'batchId' in of ? cultureId : batchId
    if (isOwn) own.set(other, [...(own.get(other) ?? []), food])
  }
  return { ...feeds, own }
}

export const sayToday = (foods: readonly Food[]): string =>
  `today ${foods.map((food) => foodLabels[food].toLowerCase()).join(', ')}`
