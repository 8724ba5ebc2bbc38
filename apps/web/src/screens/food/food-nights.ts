import type { FoodOutlook, PlainDate } from '@fryward/shared'

/** What the chart needs of a day, before and after a change. */
export type BandDay = Pick<FoodOutlook['days'][number], 'date' | 'wanted' | 'couldGive' | 'chanceShort'>

/** How likely it is that something hatches on each night, with who. */
export function hatchNightsOf({
  days,
  eaters,
}: FoodOutlook): { day: number; date: PlainDate; probability: number; names: string[] }[] {
  return days.flatMap(({ date }, day) => {
    const on = eaters.flatMap(({ name, nights }) => {
      const night = nights.find((each) => each.date === date)
      return night ? [{ name, probability: night.probability }] : []
    })
    const probability = 1 - on.reduce((none, night) => none * (1 - night.probability), 1)
    return probability >= leastMoon ? [{ day, date, probability, names: on.map(({ name }) => name) }] : []
  })
}

// A moon emptier than that says nothing.
const leastMoon = 0.03
