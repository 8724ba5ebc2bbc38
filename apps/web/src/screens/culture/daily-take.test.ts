import { describe, expect, it } from 'vitest'
import { dailyTake } from './daily-take.ts'

const point = (p50: number) => ({ at: '2026-11-25T07:00:00Z', p10: 0, p25: 0, p50, p75: 0, p90: 0 })

describe('what a daily harvest comes to', () => {
  it('is litres of the vessel and animals at the density expected on average', () => {
    const take = dailyTake({ culture: { volumeL: 18 }, outlook: { ahead: [point(200), point(300)] }, share: 0.2 })
    expect(take.volumeL).toBeCloseTo(3.6, 10)
    expect(take.animals).toBeCloseTo(900_000, 3)
  })

  it('says no animals where nothing can be said ahead', () => {
    expect(dailyTake({ culture: { volumeL: 18 }, outlook: { ahead: [] }, share: 0.2 }).animals).toBeNull()
  })
})
