import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { unionisedAmmonia, unionisedAmmoniaFraction } from './ammonia.ts'
import { convert, unitsByGroup } from './convert.ts'
import { density, salinityFromSpecificGravity, specificGravity } from './density.ts'
import {
  afterContinuousChange,
  afterWaterChanges,
  changeFraction,
  mixedSalinity,
  saltToMixG,
  saltToRaiseG,
} from './mixing.ts'
import { oxygenSaturation } from './oxygen.ts'
import { conductivityRatio, practicalSalinity } from './practical-salinity.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)
const salinities = between(0, 42)
const temperatures = between(0, 40)
const runs = { numRuns: 300 }

describe('salinity', () => {
  test('comes back from its conductivity ratio', () => {
    fc.assert(
      fc.property(salinities, between(-2, 40), between(0, 10000), (salinity, temperatureC, pressureDbar) => {
        const ratio = conductivityRatio({ salinity, temperatureC, pressureDbar })
        const back = practicalSalinity({ conductivityRatio: ratio, temperatureC, pressureDbar })
        expect(Math.abs(back - salinity)).toBeLessThan(1e-9)
      }),
      runs,
    )
  })

  test('rises with conductivity', () => {
    fc.assert(
      fc.property(between(0, 41.9), between(1e-3, 0.1), temperatures, (salinity, more, temperatureC) => {
        const lower = conductivityRatio({ salinity, temperatureC })
        expect(conductivityRatio({ salinity: salinity + more, temperatureC })).toBeGreaterThan(lower)
      }),
      runs,
    )
  })

  test('comes back from its specific gravity at any two temperatures', () => {
    fc.assert(
      fc.property(salinities, temperatures, temperatures, (salinity, temperatureC, referenceTemperatureC) => {
        const value = specificGravity({ salinity, temperatureC, referenceTemperatureC })
        const back = salinityFromSpecificGravity({ specificGravity: value, temperatureC, referenceTemperatureC })
        expect(Math.abs(back - salinity)).toBeLessThan(1e-8)
      }),
      runs,
    )
  })

  test('makes water denser, and warmth makes salt water lighter', () => {
    fc.assert(
      fc.property(between(0, 41), between(20, 39), (salinity, temperatureC) => {
        const here = density({ salinity, temperatureC })
        expect(density({ salinity: salinity + 1, temperatureC })).toBeGreaterThan(here)
        expect(density({ salinity, temperatureC: temperatureC + 1 })).toBeLessThan(here)
      }),
      runs,
    )
  })
})

test('oxygen falls as water gets warmer or saltier', () => {
  fc.assert(
    fc.property(between(0, 44), between(0, 49), (salinity, temperatureC) => {
      const here = oxygenSaturation({ salinity, temperatureC })
      expect(oxygenSaturation({ salinity: salinity + 1, temperatureC })).toBeLessThan(here)
      expect(oxygenSaturation({ salinity, temperatureC: temperatureC + 1 })).toBeLessThan(here)
    }),
    runs,
  )
})

describe('un-ionised ammonia', () => {
  test('is a share that rises with pH and warmth and falls with salinity', () => {
    fc.assert(
      fc.property(between(4, 10.9), between(0, 39), between(0, 44), (pH, temperatureC, salinity) => {
        const here = unionisedAmmoniaFraction({ pH, temperatureC, salinity })
        expect(here).toBeGreaterThan(0)
        expect(here).toBeLessThan(1)
        expect(unionisedAmmoniaFraction({ pH: pH + 0.1, temperatureC, salinity })).toBeGreaterThan(here)
        expect(unionisedAmmoniaFraction({ pH, temperatureC: temperatureC + 1, salinity })).toBeGreaterThan(here)
        expect(unionisedAmmoniaFraction({ pH, temperatureC, salinity: salinity + 1 })).toBeLessThan(here)
      }),
      runs,
    )
  })

  test('has no step anywhere in salinity, fresh water included', () => {
    fc.assert(
      fc.property(between(6, 10), temperatures, between(0, 44.99), (pH, temperatureC, salinity) => {
        const here = unionisedAmmonia({ pH, temperatureC, salinity }).pKa
        const beside = unionisedAmmonia({ pH, temperatureC, salinity: salinity + 1e-6 }).pKa
        expect(Math.abs(beside - here)).toBeLessThan(1e-7)
      }),
      runs,
    )
  })
})

describe('water changes', () => {
  test('one after the other multiply', () => {
    fc.assert(
      fc.property(between(0, 1), fc.nat(20), fc.nat(20), (fraction, first, second) => {
        const together = afterWaterChanges({ fraction, times: first + second })
        const apart = afterWaterChanges({ fraction, times: first }) * afterWaterChanges({ fraction, times: second })
        expect(Math.abs(together - apart)).toBeLessThan(1e-12)
      }),
      runs,
    )
  })

  test('in ever smaller batches become a continuous change', () => {
    fc.assert(
      fc.property(between(0.01, 3), (volumeRatio) => {
        const batches = 100_000
        const inBatches = afterWaterChanges({ fraction: volumeRatio / batches, times: batches })
        expect(Math.abs(inBatches - afterContinuousChange({ volumeRatio }))).toBeLessThan(1e-4)
        // A batch change of the same water always removes more than a mixed one.
        expect(inBatches).toBeLessThanOrEqual(afterContinuousChange({ volumeRatio }))
      }),
      runs,
    )
  })

  test('of the computed fraction reach the target', () => {
    fc.assert(
      fc.property(between(0, 50), between(0, 50), between(0, 1), (current, incoming, weight) => {
        const target = Math.min(
          Math.max(current, incoming),
          Math.max(Math.min(current, incoming), current + weight * (incoming - current)),
        )
        const fraction = changeFraction({ current, incoming, target })
        expect(current * (1 - fraction) + incoming * fraction).toBeCloseTo(target, 9)
      }),
      runs,
    )
  })
})

describe('mixing', () => {
  const parts = fc.array(fc.record({ volumeL: between(0.001, 1000), salinity: salinities }), {
    minLength: 1,
    maxLength: 8,
  })

  test('conserves salt, stays between its parts and does not care for their order', () => {
    fc.assert(
      fc.property(parts, (waters) => {
        const mixed = mixedSalinity({ parts: waters })
        const totalL = waters.reduce((sum, { volumeL }) => sum + volumeL, 0)
        const salt = waters.reduce((sum, { volumeL, salinity }) => sum + volumeL * salinity, 0)
        expect(mixed * totalL).toBeCloseTo(salt, 6)
        expect(mixed).toBeLessThanOrEqual(Math.max(...waters.map((part) => part.salinity)) + 1e-9)
        expect(mixed).toBeGreaterThanOrEqual(Math.min(...waters.map((part) => part.salinity)) - 1e-9)
        expect(mixedSalinity({ parts: [...waters].reverse() })).toBeCloseTo(mixed, 9)
      }),
      runs,
    )
  })

  test('salt to mix is linear in volume and rises with salinity', () => {
    fc.assert(
      fc.property(between(0.1, 1000), between(0, 41), temperatures, (volumeL, salinity, temperatureC) => {
        const once = saltToMixG({ volumeL, salinity, temperatureC })
        expect(saltToMixG({ volumeL: 2 * volumeL, salinity, temperatureC })).toBeCloseTo(2 * once, 6)
        expect(saltToMixG({ volumeL, salinity: salinity + 1, temperatureC })).toBeGreaterThan(once)
      }),
      runs,
    )
  })

  test('salt to raise water conserves salt by mass', () => {
    fc.assert(
      fc.property(
        between(1, 1000),
        between(0, 40),
        between(0, 2),
        temperatures,
        (volumeL, salinity, more, temperatureC) => {
          const targetSalinity = salinity + more
          const addedG = saltToRaiseG({ volumeL, salinity, targetSalinity, temperatureC })
          const waterG = volumeL * density({ salinity, temperatureC })
          const saltG = saltToMixG({ volumeL, salinity, temperatureC }) + addedG
          expect(saltG / (waterG + addedG)).toBeCloseTo((targetSalinity * 35.16504) / 35 / 1000, 10)
        },
      ),
      runs,
    )
  })
})

test('every unit converts to every other of its kind and back', () => {
  const pairs = Object.values(unitsByGroup).flatMap((units) =>
    units.flatMap((from) => units.map((to) => [from, to] as const)),
  )
  fc.assert(
    fc.property(fc.constantFrom(...pairs), between(0, 1e6), ([from, to], value) => {
      const back = convert(convert(value, from, to), to, from)
      expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(1000, value))
    }),
    { numRuns: 2000 },
  )
})
