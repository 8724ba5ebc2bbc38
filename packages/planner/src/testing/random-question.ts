import fc from 'fast-check'
import type { DayGrowth, FoodQuestion, PlanCulture, PlanEater } from '../question.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })

/** A culture of 5 to 30 L that holds up to 720 per mL, floor at 50, thinned to 300 or not at all. */
function culture(days: number, index: number): fc.Arbitrary<PlanCulture> {
  return fc
    .record({
      volumeL: fc.integer({ min: 5, max: 30 }),
      perMl: fc.integer({ min: 0, max: 600 }),
      growthPerDay: fc.double({ min: -0.1, max: 0.7, noNaN: true }),
      isThinned: fc.boolean(),
      firstDay: fc.integer({ min: 0, max: 3 }),
      use: fc.constantFrom('free' as const, 'free' as const, 'free' as const, 'when-short' as const, 'never' as const),
    })
    .map(({ volumeL, perMl, growthPerDay, isThinned, firstDay, use }) => {
      const ml = volumeL * 1000
      const gain = Math.exp(growthPerDay)
      const growth: DayGrowth = { gain, crowding: Math.max(0, gain - 1) / (720 * ml) }
      return {
        id: `C${index}`,
        food: 'rotifers',
        volumeL,
        animals: perMl * ml,
        growth: Array.from({ length: days }, () => growth),
        floorAnimals: 50 * ml,
        mostShare: 0.5,
        thinnedToAnimals: isThinned ? 300 * ml : null,
        firstDay,
        use,
      }
    })
}

function eater(days: number, index: number): fc.Arbitrary<PlanEater> {
  return fc
    .record({
      from: fc.integer({ min: 0, max: days - 1 }),
      each: fc.array(share, { minLength: days, maxLength: days }),
    })
    .map(({ from, each }) => ({
      id: `B${index}`,
      food: 'rotifers',
      wanted: each.map((size, day) => (day < from || size < 0.1 ? 0 : Math.round(size * 2e6))),
      fedFrom: index % 2 === 0 ? ['C0'] : [],
    }))
}

/** Rooms from ample to hopeless, with cultures that grow, stand still or fall. */
export const questions = (most: { days: number; cultures: number; eaters: number }): fc.Arbitrary<FoodQuestion> =>
  fc
    .record({
      days: fc.integer({ min: 1, max: most.days }),
      cultures: fc.integer({ min: 0, max: most.cultures }),
      eaters: fc.integer({ min: 0, max: most.eaters }),
    })
    .chain(({ days, cultures, eaters }) =>
      fc.record({
        days: fc.constant(days),
        cultures: fc.tuple(...Array.from({ length: cultures }, (_, index) => culture(days, index))),
        eaters: fc.tuple(...Array.from({ length: eaters }, (_, index) => eater(days, index))),
        sievingLoss: fc.constantFrom(0, 0.1),
      }),
    )
