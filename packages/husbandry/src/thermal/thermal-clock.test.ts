import { describe, expect, it } from 'vitest'
import { dayMs } from '../calendar/elapsed.ts'
import { findSpecies } from '../species/index.ts'
import { developmentRate } from './rate.ts'
import { type TankWarmth, thermalClock } from './thermal-clock.ts'

const { incubation } = findSpecies('amphiprion-ocellaris')!
const rate = (temperatureC: number) => developmentRate(incubation, temperatureC)
const at = (day: number, hour = 0) => Date.UTC(2026, 1, 2 + day, hour)
const reading = (day: number, temperatureC: number) => ({ at: new Date(at(day)).toISOString(), temperatureC })
const clockOf = (warmth: TankWarmth) => thermalClock(incubation, at(0), warmth)

describe('thermalClock', () => {
  it('holds each reading until the next and the last one for a day before the set point', () => {
    const clock = clockOf({ temperatures: [reading(1, 28), reading(3, 26)], setPointC: 27 })
    const expected = [rate(27), rate(28), rate(28), rate(26), rate(27), rate(27)]
    let sum = 0
    for (const [day, step] of expected.entries()) {
      expect(clock.progressDays(at(day))).toBeCloseTo(sum, 12)
      expect(clock.progressDays(at(day, 12))).toBeCloseTo(sum + step / 2, 12)
      sum += step
    }
  })

  it('lets the first and last readings reach to both ends without a set point', () => {
    const clock = clockOf({ temperatures: [reading(1, 28), reading(3, 26)] })
    expect(clock.progressDays(at(10))).toBeCloseTo(3 * rate(28) + 7 * rate(26), 12)
  })

  it('starts from the reading that held at the start', () => {
    const clock = clockOf({ temperatures: [reading(-5, 25), reading(-2, 29)] })
    expect(clock.progressDays(at(2))).toBeCloseTo(2 * rate(29), 12)
    expect(clock.progressDays(at(0))).toBe(0)
  })

  it('takes two readings at one instant as their mean', () => {
    const both = clockOf({ temperatures: [reading(0, 26), reading(0, 28)] })
    expect(both.progressDays(at(3))).toBeCloseTo(3 * rate(27), 12)
  })

  it('counts the hours outside the tried temperatures', () => {
    const clock = clockOf({ temperatures: [reading(0, 27), reading(1, 31), reading(2, 27), reading(4, 24)] })
    expect([1, 1.5, 2, 4, 5].map((day) => clock.hoursOutsideTried(at(0) + day * dayMs))).toEqual([0, 12, 24, 24, 48])
  })
})
