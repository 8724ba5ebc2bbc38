import { describe, expect, it } from 'vitest'
import { speciesProfiles } from '../species/index.ts'
import { nextSpawning } from './next-spawning.ts'

const base = { spawnedAt: '2026-02-02T10:00:00Z', timeZone: 'UTC', species: 'amphiprion-percula' }

describe('nextSpawning', () => {
  it.each([
    ['amphiprion-percula', 10.9],
    ['amphiprion-ocellaris', 14.8],
    ['amphiprion-melanopus', 23.2],
    ['pseudochromis-fridmani', 7],
  ])('%s alone expects %d days', (species, days) => {
    expect(nextSpawning({ ...base, species }).level.medianDays).toBeCloseTo(days, 10)
  })

  it('gives dates whose probabilities sum to 1 for every species', () => {
    for (const species of speciesProfiles) {
      const { nights } = nextSpawning({ ...base, species })
      const sum = nights.reduce((total, { probability }) => total + probability, 0)
      expect(Math.abs(sum - 1)).toBeLessThan(1e-9)
    }
  })

  it("comes to a pair's own rhythm after a few intervals", () => {
    const pairHistory = Array.from({ length: 8 }, () => ({ intervalDays: 18 }))
    const forecast = nextSpawning({ ...base, pairHistory })
    expect(forecast.level.medianDays).toBeGreaterThan(16)
    expect(forecast.level.logSd).toBeLessThan(nextSpawning(base).level.logSd)
  })

  it('drops the days that passed without a spawning', () => {
    const forecast = nextSpawning({ ...base, notSpawnedBy: '2026-02-15' })
    expect(forecast.nights[0]!.date).toBe('2026-02-15')
    expect(forecast.likeliest.probability).toBeGreaterThan(nextSpawning(base).likeliest.probability)
  })

  it('starts a day at local midnight, also on the day of a clock change', () => {
    const { nights } = nextSpawning({ ...base, spawnedAt: '2026-03-20T10:00:00Z', timeZone: 'Europe/Lisbon' })
    const day = nights.find(({ date }) => date === '2026-03-29')
    expect(day?.windowStartsAt).toBe('2026-03-29T00:00:00Z')
    expect(day?.windowEndsAt).toBe('2026-03-29T23:00:00Z')
  })

  it.each([
    [{ timeZone: 'Nowhere' }, 'timeZone: "Nowhere" is not a time zone'],
    [{ pairHistory: [{ intervalDays: 0 }] }, 'pairHistory[0].intervalDays: 0 is not a number from 1 to 400'],
    [{ spawnedAt: '' }, 'spawnedAt: "" is not an ISO 8601 instant'],
  ])('refuses %j', (change, message) => {
    expect(() => nextSpawning({ ...base, ...change })).toThrow(message)
  })
})
