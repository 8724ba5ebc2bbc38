import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { isWeanedFood } from '../species/weaned-food.ts'
import { daysSince, factsUntil } from './day-facts.ts'

/** How the food that a batch is weaned to was taken, and the words in which a feeding keeps it. */
export const takenWords = {
  none: 'Hardly any take it.',
  some: 'Some take it.',
  all: 'Nearly all take it.',
} as const
export type Taken = keyof typeof takenWords

const answers = Object.keys(takenWords) as Taken[]

/**
 * For how many days nearly all of a batch have taken what they are weaned to, by every answer since; null when the last one says
 * otherwise, or nobody has said.
 */
export function daysWeaned(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): number | null {
  const said = factsUntil(snapshot, 'feeding', { subjectId: batch.id, until: day.endsAt }).flatMap((fact) => {
    const taken = answers.find((answer) => isWeanedFood(fact.data.food) && fact.data.note === takenWords[answer])
    return taken ? [{ fact, taken }] : []
  })
  const lastNo = said.findLastIndex(({ taken }) => taken !== 'all')
  return daysSince(snapshot, said[lastNo + 1]?.fact, day.date)
}
