import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from './day-facts.ts'

/** How dry food was taken, and the words in which a feeding keeps it. */
export const dryFoodWords = {
  none: 'Hardly any take it.',
  some: 'Some take it.',
  all: 'Nearly all take it.',
} as const
export type DryFoodTaken = keyof typeof dryFoodWords

const answers = Object.keys(dryFoodWords) as DryFoodTaken[]

/**
 * For how many days nearly all of a batch have taken dry food, by every answer since; null when the last one says
 * otherwise, or nobody has said.
 */
export function daysOnDryFood(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): number | null {
  const said = factsUntil(snapshot, 'feeding', { subjectId: batch.id, until: day.endsAt }).flatMap((fact) => {
    const taken = answers.find((answer) => fact.data.food === 'dry' && fact.data.note === dryFoodWords[answer])
    return taken ? [{ fact, taken }] : []
  })
  const lastNo = said.findLastIndex(({ taken }) => taken !== 'all')
  return daysSince(snapshot, said[lastNo + 1]?.fact, day.date)
}
