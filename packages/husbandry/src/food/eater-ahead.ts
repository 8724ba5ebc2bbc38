import type { eaterKinds, Id, Night } from '@fryward/shared'

/** Who will want rotifers on the days ahead. Animals are live ones, as they swim into the tank. */
export type EaterAhead = {
  id: string
  kind: (typeof eaterKinds)[number]
  /** The batch, the clutch or the pair. */
  subjectId: Id
  name: string
  /** Expected on its first day of food, or today; null while nobody has said. */
  larvae: number | null
  /** Nights on which it may hatch, as many as lie ahead; empty for a batch. */
  nights: Night[]
  /** Wanted on each day in each future. */
  futures: number[][]
  /** Cultures that feed it now, the first choice first. */
  fedFrom: Id[]
}

/** What is wanted on each day, over all futures. */
export function meanWanted({ futures }: EaterAhead, days: number): number[] {
  const sums = new Array<number>(days).fill(0)
  for (const future of futures) for (const [day, animals] of future.entries()) sums[day]! += animals
  return sums.map((sum) => (futures.length > 0 ? sum / futures.length : 0))
}
