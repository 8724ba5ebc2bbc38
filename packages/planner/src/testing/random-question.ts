import fc from 'fast-check'
import type { DayGrowth, FoodQuestion, PlanCulture, PlanEater } from '../question.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

const share = between(0, 1)

/** A culture of 5 to 30 L that holds up to 720 per mL, floor at 50, thinned to 300 or not at all. */
function culture(days: number, index: number): fc.Arbitrary<PlanCulture> {
  return fc
    .record({
      volumeL: fc.integer({ min: 5, max: 30 }),
      perMl: fc.integer({ min: 0, max: 600 }),
      growthPerDay: between(-0.1, 0.7),
      isThinned: fc.boolean(),
      goneShare: fc.constantFrom(0, 0, 0.2, 0.45),
      firstDay: fc.integer({ min: 0, max: 3 }),
      use: fc.constantFrom('free' as const, 'free' as const, 'free' as const, 'when-short' as const, 'never' as const),
    })
    .map(({ volumeL, perMl, growthPerDay, isThinned, goneShare, firstDay, use }) => {
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
        goneShare,
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

/** Cultures that all give, and batches that want about as much as those have: where one has to look who eats of what. */
export const tightQuestions = (number: {
  days: number
  cultures: number
  eaters: number
}): fc.Arbitrary<FoodQuestion> => {
  const { days, cultures, eaters } = number
  const several = <T>(count: number, each: fc.Arbitrary<T>) => fc.array(each, { minLength: count, maxLength: count })
  const drawn = fc.record({
    cultures: several(
      cultures,
      fc.record({ volumeL: fc.integer({ min: 8, max: 30 }), growth: fc.double({ min: 0.2, max: 0.6, noNaN: true }) }),
    ),
    sizes: several(eaters, fc.double({ min: 0.5, max: 1.5, noNaN: true })),
    load: fc.double({ min: 0.4, max: 1.1, noNaN: true }),
  })
  return drawn.map(({ cultures: drawnCultures, sizes, load }) => {
    const made = drawnCultures.map(({ volumeL, growth }, index): PlanCulture => {
      const [ml, gain] = [volumeL * 1000, Math.exp(growth)]
      const day: DayGrowth = { gain, crowding: (gain - 1) / (720 * ml) }
      return {
        ...{
          id: `C${index}`,
          food: 'rotifers',
          volumeL,
          animals: 300 * ml,
          growth: new Array<DayGrowth>(days).fill(day),
        },
        ...{ floorAnimals: 50 * ml, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free' },
      }
    })
    // A day's growth of all of them, shared out by the batches' sizes.
    const daily = load * made.reduce((sum, { animals, growth }) => sum + animals * (growth[0]!.gain - 1), 0)
    const all = sizes.reduce((sum, size) => sum + size, 0)
    return {
      ...{ days, sievingLoss: 0.1, cultures: made },
      eaters: sizes.map((size, index) => ({
        ...{
          id: `B${index}`,
          food: 'rotifers',
          wanted: new Array<number>(days).fill((daily * size) / all),
          fedFrom: [],
        },
      })),
    }
  })
}
