import { describe, expect, it } from 'vitest'
import { type CultureDay, cultureDaysAhead, expectedCultureDays } from './culture-days.ts'
import { estimateCulture } from './culture-estimate.ts'
import { fitCulture } from './culture-fit.ts'
import { cultureFutures } from './culture-forecast.ts'

const history = {
  observations: [
    { day: 0, densityPerMl: 63, animalsCounted: 63 },
    { day: 1, densityPerMl: 95, animalsCounted: 95, eggRatio: 0.5 },
    { day: 2.3, densityPerMl: 150, animalsCounted: 150, eggRatio: 0.6 },
  ],
  temperatureC: 25,
  salinity: 20,
}
const estimate = estimateCulture(history, fitCulture(history), { atDay: 2.6 })
const days = 10

/** Densities on the mornings ahead, with a share taken each morning from the next one on. */
function walk({ densityPerMl, days: ahead }: { densityPerMl: number; days: CultureDay[] }, share: number): number[] {
  let density = densityPerMl
  return ahead.map(({ gain, crowding }, index) => {
    const left = index === 0 ? density : density * (1 - share)
    density = (gain * left) / (1 + crowding * left)
    return density
  })
}

describe('days ahead of a culture', () => {
  it('walked through under a harvest are the futures under that harvest', () => {
    const futures = 20
    const drawn = cultureDaysAhead({ estimate, days, seed: 7, futures })
    for (const share of [0, 0.3]) {
      const known = cultureFutures({ estimate, plan: { harvestFractionPerDay: share }, days, seed: 7, futures })
      for (const [index, future] of drawn.entries())
        for (const [day, density] of walk(future, share).entries())
          expect(density / known.densitiesPerMl[index]![day]!).toBeCloseTo(1, 9)
    }
  })

  it.each([
    ['days is 0; allowed: a whole number from 1 to 366', { days: 0 }],
    ['days is 367', { days: 367 }],
    ['futures is 0; allowed: a whole number from 1 to 20000', { futures: 0 }],
    ['futures is 20001', { futures: 20_001 }],
  ])('are not drawn where %s', (sentence, change) => {
    const least = { estimate, days: 1, seed: 1, futures: 1 }
    expect(cultureDaysAhead(least)).toHaveLength(1)
    expect(() => cultureDaysAhead({ ...least, ...change })).toThrow(sentence)
  })

  it('as expected lie in the middle of those drawn', () => {
    const expected = walk(expectedCultureDays({ estimate, days }), 0.2)
    const drawn = cultureDaysAhead({ estimate, days, seed: 3, futures: 400 }).map((future) => walk(future, 0.2))
    for (const day of [0, 4, 9]) {
      const below = drawn.filter((densities) => densities[day]! < expected[day]!).length / drawn.length
      expect(below).toBeGreaterThan(0.35)
      expect(below).toBeLessThan(0.65)
    }
  })
})
