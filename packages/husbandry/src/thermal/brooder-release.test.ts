import { describe, expect, it } from 'vitest'
import { brooderRelease } from './brooder-release.ts'

const base = {
  spawnedAt: '2026-02-02T20:00:00Z',
  temperatures: [],
  setPointC: 27,
  lightsOff: { time: '21:00', timeZone: 'UTC' },
  species: 'pterapogon-kauderni',
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

describe('brooderRelease', () => {
  it('expects Banggai young 29 days after the male took the eggs: 19 to hatch and 10 more in the mouth', () => {
    const forecast = brooderRelease(base)
    expect(forecast.level.medianDays).toBeCloseTo(29, 10)
    expect(forecast.window80.from <= '2026-03-03' && '2026-03-03' <= forecast.window80.to).toBe(true)
    expect(Math.abs(sum(forecast.nights.map(({ probability }) => probability)) - 1)).toBeLessThan(1e-9)
  })

  it('spreads a seahorse birth by the published 17 %', () => {
    const forecast = brooderRelease({ ...base, species: 'hippocampus-erectus', setPointC: 28 })
    expect(forecast.level.medianDays).toBeCloseTo(17.33, 10)
    expect(forecast.level.logSd).toBeCloseTo(2.94 / 17.33, 2)
  })

  it('leaves out the nights before a morning without young, and learns from earlier broods', () => {
    expect(brooderRelease({ ...base, notReleasedBy: '2026-03-04' }).nights[0]!.date).toBe('2026-03-04')
    const quick = brooderRelease({ ...base, pairHistory: [{ durationDays: 24 }, { durationDays: 24 }] })
    expect(quick.level.medianDays).toBeLessThan(26)
  })

  it('refuses a species that tends a nest', () => {
    expect(() => brooderRelease({ ...base, species: 'amphiprion-percula' })).toThrow('use hatchNights')
  })
})
