import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { artemiaHatchPlan } from './artemia-plan.ts'
import { densityFromCounts } from './count.ts'
import { birthRate, eggDevelopmentDays } from './egg-ratio.ts'
import { learnGrazing } from './grazing.ts'
import { growthPrior } from './growth-prior.ts'
import { preyTopUp } from './prey-density.ts'
import { concentrateRation, densityFedByConcentrate, rationAdjustment } from './ration.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

const amount = (max: number) => fc.double({ min: 0, max, noNaN: true })
const above0 = (max: number) => fc.double({ min: max / 1e6, max, noNaN: true })
const counts = fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 8 })

describe('counts', () => {
  it('the density lies inside its interval, and the order of replicates is nothing', () => {
    fc.assert(
      fc.property(counts, above0(10), between(1, 100), (animals, volumeMl, dilution) => {
        const density = densityFromCounts({ animals, volumeMl, dilution })
        expect(density.lowerPerMl).toBeLessThanOrEqual(density.densityPerMl)
        expect(density.upperPerMl).toBeGreaterThan(density.densityPerMl)
        const reversed = densityFromCounts({ animals: animals.toReversed(), volumeMl, dilution })
        expect(reversed.upperPerMl / density.upperPerMl).toBeCloseTo(1, 9)
      }),
      { numRuns: 100 },
    )
  })

  it('a higher level gives a wider interval', () => {
    fc.assert(
      fc.property(counts, (animals) => {
        const narrow = densityFromCounts({ animals, volumeMl: 1, level: 0.8 })
        const wide = densityFromCounts({ animals, volumeMl: 1, level: 0.99 })
        expect(wide.lowerPerMl).toBeLessThanOrEqual(narrow.lowerPerMl)
        expect(wide.upperPerMl).toBeGreaterThan(narrow.upperPerMl)
      }),
      { numRuns: 100 },
    )
  })
})

describe('eggs and growth', () => {
  it('warmer eggs hatch sooner, by both sources', () => {
    fc.assert(
      fc.property(between(5, 34), above0(1), (temperatureC, step) => {
        for (const source of ['fao-361', 'bottrell-1976'] as const) {
          const cooler = eggDevelopmentDays({ temperatureC, source })
          expect(eggDevelopmentDays({ temperatureC: temperatureC + step, source })).toBeLessThan(cooler)
        }
      }),
    )
  })

  it('the birth rate returns the eggs it came from', () => {
    fc.assert(
      fc.property(amount(5), above0(10), (eggRatio, developmentDays) => {
        const rate = birthRate({ eggRatio, developmentDays })
        expect(Math.expm1(rate * developmentDays)).toBeCloseTo(eggRatio, 9)
      }),
    )
  })

  it('expected growth is a number above 0 wherever it is answered', () => {
    fc.assert(
      fc.property(between(5, 35), amount(97), (temperatureC, salinity) => {
        const { growthPerDay } = growthPrior({ temperatureC, salinity })
        expect(growthPerDay).toBeGreaterThan(0)
        expect(growthPerDay).toBeLessThan(1.1)
      }),
    )
  })
})

describe('rations', () => {
  it('what a ration feeds is the density it was made for', () => {
    fc.assert(
      fc.property(above0(5000), above0(1000), between(1e6, 1e12), (rotifersPerMl, volumeL, cells) => {
        const { mlPerDay } = concentrateRation({ rotifersPerMl, volumeL, concentrateCellsPerMl: cells })
        const fed = densityFedByConcentrate({ mlPerDay, volumeL, concentrateCellsPerMl: cells })
        expect(fed / rotifersPerMl).toBeCloseTo(1, 9)
      }),
    )
  })

  it('no run of sightings takes the adjustment out of 0.5 to 1.5, and an unsound culture is never fed more', () => {
    const sightings = fc.array(
      fc.record({ water: fc.constantFrom('green' as const, 'tinted' as const, 'clear' as const), sound: fc.boolean() }),
    )
    fc.assert(
      fc.property(sightings, (seen) => {
        let factor = 1
        for (const { water, sound } of seen) {
          const next = rationAdjustment({ waterAtNextFeed: water, isCultureSound: sound, previous: factor }).factor
          expect(next).toBeGreaterThanOrEqual(0.5)
          expect(next).toBeLessThanOrEqual(1.5)
          if (!sound) expect(next).toBeLessThanOrEqual(factor)
          factor = next
        }
      }),
    )
  })
})

describe('prey in a larval tank', () => {
  const tank = fc.record({
    targetPerMl: amount(50),
    residualPerMl: amount(50),
    volumeL: above0(500),
    larvae: fc.integer({ min: 0, max: 5000 }),
    eatenPerLarvaPerHour: amount(80),
    hoursUntilNextFeed: amount(24),
    waterExchangedFraction: amount(1),
    dilutionPerDay: amount(5),
  })

  it('the top-up is never below 0 and, with none eaten or flushed, ends at the target or above it', () => {
    fc.assert(
      fc.property(tank, (input) => {
        const topUp = preyTopUp(input)
        expect(topUp.animalsToAdd).toBeGreaterThanOrEqual(0)
        const still = preyTopUp({ ...input, larvae: 0, dilutionPerDay: 0 })
        expect(still.densityAfterPerMl).toBeGreaterThanOrEqual(input.targetPerMl - 1e-9)
        expect(topUp.animalsToAdd).toBeGreaterThanOrEqual(still.animalsToAdd - 1e-6)
      }),
    )
  })

  it('more left over never asks for more', () => {
    fc.assert(
      fc.property(tank, amount(10), (input, more) => {
        const leftOver = { ...input, residualPerMl: input.residualPerMl + more }
        expect(preyTopUp(leftOver).animalsToAdd).toBeLessThanOrEqual(preyTopUp(input).animalsToAdd + 1e-6)
      }),
    )
  })

  it('grazing is learned back from counts it made', () => {
    const meals = fc.array(fc.record({ larvae: fc.integer({ min: 10, max: 500 }), hours: above0(6) }), {
      minLength: 2,
      maxLength: 8,
    })
    fc.assert(
      fc.property(meals, between(0.1, 20), (all, eaten) => {
        const observations = all.map(({ larvae, hours }) => {
          const afterPerMl = 1
          return { beforePerMl: afterPerMl + (larvae * hours * eaten) / 20_000, afterPerMl, hours, larvae, volumeL: 20 }
        })
        const learned = learnGrazing({ observations })
        expect(learned.eatenPerLarvaPerHour).toBeCloseTo(eaten, 6)
        expect(learned.basis).toBe('learned')
      }),
    )
  })
})

describe('Artemia timing', () => {
  it('the steps are in order, cooler water starts sooner, and every vessel keeps its loading', () => {
    const plan = fc.record({
      neededAt: fc.integer({ min: 0, max: 4e12 }),
      nauplii: between(1000, 1e9),
      temperatureC: between(16, 33),
      enrichHours: fc.constantFrom(0, 12, 24),
    })
    fc.assert(
      fc.property(plan, (input) => {
        const hatch = artemiaHatchPlan(input)
        const times = [hatch.startAt, hatch.harvestAt, hatch.enrichAt ?? hatch.harvestAt, hatch.neededAt]
        expect(times.toSorted()).toEqual(times)
        const cooler = artemiaHatchPlan({ ...input, temperatureC: input.temperatureC - 1 })
        expect(Date.parse(cooler.startAt)).toBeLessThanOrEqual(Date.parse(hatch.startAt))
        const loadingGPerL = hatch.cystsG / (hatch.vesselL * hatch.vessels)
        expect(loadingGPerL).toBeLessThanOrEqual((hatch.vesselL < 20 ? 5 : 2) + 1e-9)
      }),
    )
  })
})
