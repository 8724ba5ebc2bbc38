import { describe, expect, it } from 'vitest'
import { metamorphosis, metamorphosisDays } from './metamorphosis.ts'

const base = {
  hatchedAt: '2026-02-02T20:00:00Z',
  timeZone: 'UTC',
  species: 'amphiprion-melanopus',
  temperatures: [],
  setPointC: 28,
}

describe('metamorphosis', () => {
  it('expects A. melanopus at 28 C nine days after hatch', () => {
    const forecast = metamorphosis(base)
    expect(forecast.level.medianDays).toBeCloseTo(9, 10)
    expect(forecast.likeliest.date).toBe('2026-02-11')
    expect(forecast.isExtrapolated).toBe(false)
  })

  it('comes about three days later at 25 C', () => {
    expect(metamorphosis({ ...base, setPointC: 25 }).likeliest.date).toBe('2026-02-14')
  })

  it('drops the days before which nothing had turned', () => {
    expect(metamorphosis({ ...base, notMetamorphosedBy: '2026-02-13' }).nights[0]!.date).toBe('2026-02-13')
  })

  it('widens the range of a duration away from its reference temperature', () => {
    const width = (temperatureC: number) => {
      const { lower80Days, upper80Days } = metamorphosisDays({ species: base.species, temperatureC })
      return upper80Days / lower80Days
    }
    expect(width(23)).toBeGreaterThan(width(28))
  })

  it.each(['pterapogon-kauderni', 'hippocampus-erectus'])('%s has no larval stage', (species) => {
    expect(() => metamorphosis({ ...base, species })).toThrow('has no larval stage')
    expect(() => metamorphosisDays({ species, temperatureC: 27 })).toThrow('has no larval stage')
  })
})
