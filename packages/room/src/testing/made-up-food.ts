import type { CultureAhead, FoodAhead } from '@fryward/husbandry'
import type { FoodPlan, TriedDay } from '@fryward/planner'
import type { FoodOutlook } from '@fryward/shared'

/** A culture of ten litres with 100 per mL, as a plan knows it. */
export const cultureAhead = (given: Partial<CultureAhead> = {}): CultureAhead => ({
  ...{ id: 'r1', culture: null, name: 'R1', volumeL: 10, standing: 'gives', animals: 1e6, growth: [], futures: [] },
  ...{ floorAnimals: 2e5, mostShare: 0.4, goneShare: 0, thinnedToAnimals: null, firstDay: 0, sharesCausesWith: [] },
  ...given,
})

export const foodAheadOf = (given: Partial<FoodAhead> = {}): FoodAhead => ({
  ...{ today: '2026-03-10', days: 2, cultures: [], eaters: [], sievingLoss: 0.1, pairs: [], gaps: [] },
  ...{ mayUseBackups: false, mayUseReserve: false },
  artemia: { hatches: [], days: [dayWithoutArtemia, dayWithoutArtemia], gaps: [] },
  ...given,
})
const dayWithoutArtemia = { gives: [], batches: [] }

export const eaterAhead = (
  id: string,
  given: Partial<FoodAhead['eaters'][number]> = {},
): FoodAhead['eaters'][number] => ({
  ...{ id, kind: 'larval_batch', subjectId: `subject of ${id}`, name: id, larvae: 300, nights: [] },
  ...{ futures: [], fedFrom: [] },
  ...given,
})

export const triedDay = (given: Partial<TriedDay> = {}): TriedDay => ({
  ...{ chance: 0, chances: [], short: { mean: 0, p90: 0 } },
  ...given,
})

export const plannedDay = (given: Partial<FoodPlan['days'][number]> = {}): FoodPlan['days'][number] => ({
  ...{ gives: [], cultures: [], eaters: [] },
  ...given,
})

type OutlookDay = FoodOutlook['days'][number]
export const outlookDay = (date: string, given: Partial<OutlookDay> = {}): OutlookDay => {
  const none = { p10: 0, p50: 0, p90: 0 }
  return {
    ...{ date, gives: [], cultures: [], eaters: [], wanted: none, couldGive: none, chanceShort: 0, nauplii: 0 },
    short: { mean: 0, p90: 0 },
    ...given,
  }
}

export const outlookOf = (given: Partial<FoodOutlook> = {}): FoodOutlook => ({
  ...{ days: [], cultures: [], eaters: [], worry: null, shortTotal: 0, backupsUsed: [], gaps: [] },
  ...given,
})
