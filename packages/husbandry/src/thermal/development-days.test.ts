import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { speciesProfiles } from '../species/index.ts'
import { clutchStageAt } from './clutch-stage.ts'
import { developmentDays } from './development-days.ts'
import { incubationLevel } from './incubation-level.ts'

describe('developmentDays', () => {
  it('is never longer in warmer water, and holds its median within its range', () => {
    const temperature = fc.double({ min: 10, max: 40, noNaN: true })
    fc.assert(
      fc.property(fc.constantFrom(...speciesProfiles), temperature, temperature, (species, a, b) => {
        const cool = developmentDays({ species, temperatureC: Math.min(a, b) })
        const warm = developmentDays({ species, temperatureC: Math.max(a, b) })
        expect(warm.days).toBeLessThanOrEqual(cool.days)
        expect(cool.lower80Days).toBeLessThan(cool.days)
        expect(cool.upper80Days).toBeGreaterThan(cool.days)
      }),
      { numRuns: 300 },
    )
  })

  it('runs 2.5 times faster 10 C warmer', () => {
    const [cool, warm] = [20, 30].map((temperatureC) =>
      developmentDays({ species: 'amphiprion-clarkii', temperatureC }),
    )
    expect(cool!.days / warm!.days).toBeCloseTo(2.5, 10)
  })

  it('flags temperatures at which no duration was seen', () => {
    const at = (temperatureC: number) => developmentDays({ species: 'amphiprion-percula', temperatureC }).isExtrapolated
    expect([25.9, 26, 29, 29.1].map(at)).toEqual([true, false, false, true])
  })

  it.each([Number.NaN, -1, 9.9, 40.1, Number.POSITIVE_INFINITY])('refuses %d C', (temperatureC) => {
    const message = `temperatureC: ${temperatureC} is not a number from 10 to 40`
    expect(() => developmentDays({ species: 'amphiprion-percula', temperatureC })).toThrow(message)
  })
})

describe('clutchStageAt', () => {
  const at = (instant: string) =>
    clutchStageAt({
      spawnedAt: '2026-02-02T10:00:00Z',
      at: instant,
      temperatures: [],
      setPointC: 27.35,
      species: 'amphiprion-ocellaris',
    })

  it('names the colour and eyes that a clutch should have', () => {
    const ids = (instant: string) => at(instant).expected.map(({ id }) => id)
    expect(ids('2026-02-03T10:00:00Z')).toEqual(['orange', 'no-eyes'])
    expect(ids('2026-02-05T10:00:00Z')).toEqual(['black', 'no-eyes'])
    expect(ids('2026-02-06T10:00:00Z')).toEqual(['black', 'eyes'])
    expect(ids('2026-02-08T10:00:00Z')).toEqual(['silver', 'eyes'])
  })

  it('counts the day of spawning as day 1', () => {
    expect(at('2026-02-02T10:00:00Z').dayNumber).toBe(1)
    expect(at('2026-02-05T09:00:00Z').dayNumber).toBe(3)
    expect(at('2026-02-05T10:00:00Z').share).toBeCloseTo(3 / 6.83, 10)
  })

  it('refuses an instant before the spawning', () => {
    expect(() => at('2026-02-01T10:00:00Z')).toThrow('at: 2026-02-01T10:00:00Z is before spawnedAt')
  })
})

describe('incubationLevel', () => {
  it('is the geometric mean of durations moved to one temperature', () => {
    const durations = [
      { durationDays: 6, temperatureC: 28 },
      { durationDays: 9, temperatureC: 28 },
    ]
    const level = incubationLevel({ durations, referenceTemperatureC: 27, q10: 2.5 })
    expect(level.medianDays).toBeCloseTo(Math.sqrt(54) * 2.5 ** 0.1, 10)
    expect(level.logSpread).toBeCloseTo(Math.log(1.5) / Math.SQRT2, 10)
  })

  it('refuses an empty list', () => {
    expect(() => incubationLevel({ durations: [], referenceTemperatureC: 27, q10: 2.5 })).toThrow(
      'durations: [] is empty',
    )
  })
})
