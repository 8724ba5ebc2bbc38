import type { FoodOutlook } from '@fryward/shared'
import { toPlainDate } from '@fryward/words'

type Hatch = NonNullable<FoodOutlook['hatches']>[number]

/** The day of the plan on which each hatch is food first; those that come out after its last day are on none. */
export const hatchDaysOf = ({ days, hatches = [] }: FoodOutlook, timeZone: string): { day: number; hatch: Hatch }[] =>
  hatches.flatMap((hatch) => {
    const date = toPlainDate(hatch.readyAt, timeZone)
    // What was harvested before today is food today.
    const day = days.findIndex((each) => each.date >= date)
    return day < 0 ? [] : [{ day, hatch }]
  })
