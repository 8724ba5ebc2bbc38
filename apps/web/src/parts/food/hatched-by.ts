import type { FoodOutlook, PlainDate } from '@fryward/shared'

type Eater = FoodOutlook['eaters'][number]

/** How likely it is that an eater swims by the morning of a date; a batch does. */
export function hatchedBy({ kind, nights }: Pick<Eater, 'kind' | 'nights'>, date: PlainDate): number {
  if (kind === 'larval_batch') return 1
  return nights.filter((night) => night.date < date).reduce((sum, { probability }) => sum + probability, 0)
}
