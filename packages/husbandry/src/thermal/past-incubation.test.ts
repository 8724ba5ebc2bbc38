import { describe, expect, it } from 'vitest'
import { hatchNights } from './hatch-nights.ts'
import { pastIncubation } from './past-incubation.ts'

const base = {
  spawnedAt: '2026-02-02T10:00:00Z',
  hatchedOn: '2026-02-10',
  temperatures: [{ at: '2026-02-02T10:00:00Z', temperatureC: 28 }],
  lightsOff: { time: '19:00', timeZone: 'UTC' },
  species: 'amphiprion-ocellaris',
}

describe('pastIncubation', () => {
  it('counts from spawning to the middle of the hatch window', () => {
    const past = pastIncubation(base)
    expect(past.durationDays).toBeCloseTo(8.4375, 12)
    expect(past.temperatureC).toBeCloseTo(28, 10)
  })

  it('gives the constant temperature that does the same development', () => {
    const later = { at: '2026-02-06T15:15:00Z', temperatureC: 26 }
    const { temperatureC } = pastIncubation({ ...base, temperatures: [...base.temperatures, later] })
    const rate = (celsius: number) => 2.5 ** (celsius / 10)
    expect(rate(temperatureC)).toBeCloseTo((rate(28) + rate(26)) / 2, 10)
  })

  it('moves the level of the next clutch towards what this one took', () => {
    const next = { ...base, spawnedAt: '2026-03-02T10:00:00Z', pairHistory: [pastIncubation(base)] }
    const atReference = 8.4375 * 2.5 ** ((28 - 27.35) / 10)
    const { medianDays } = hatchNights(next).level
    expect(medianDays).toBeGreaterThan(6.83)
    expect(medianDays).toBeLessThan(atReference)
  })

  it('refuses a hatch before the spawning', () => {
    expect(() => pastIncubation({ ...base, hatchedOn: '2026-02-01' })).toThrow(
      'hatchedOn: 2026-02-01 has no night after spawnedAt 2026-02-02T10:00:00Z',
    )
    expect(() => pastIncubation({ ...base, hatchedOn: 'soon' })).toThrow('hatchedOn: "soon" is not a date')
  })
})
