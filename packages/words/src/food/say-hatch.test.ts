import { describe, expect, test } from 'vitest'
import { sayArtemiaDay, sayHatch } from './say-hatch.ts'

const voice = { locale: 'en-GB', timeZone: 'Europe/Berlin', units: 'metric' } as const
const hatch = {
  ...{ id: 'h', cultureId: '018f0000-0000-7000-8000-000000000001', name: 'H1', nauplii: 36_000 },
  ...{ standing: 'under_way' as const, readyAt: '2026-11-25T11:30:00.000Z', goodUntil: '2026-11-26T11:30:00.000Z' },
}

describe('a hatch in words', () => {
  test('says how much it is, where it is, and how long it is food', () => {
    const asked = { today: '2026-11-25', voice }
    expect(sayHatch(hatch, asked)).toBe('about 36,000 nauplii, in its cone: out today 12:30, food until tomorrow 12:30')
    expect(sayHatch({ ...hatch, standing: 'kept' }, asked)).toBe(
      'about 36,000 nauplii, kept cold: food until tomorrow 12:30',
    )
    expect(sayHatch({ ...hatch, standing: 'asked' }, asked)).toContain('cysts on today’s list: out today')
  })

  test('of a day is what is wanted, who gives it, and what is still to hatch', () => {
    const batch = { batchId: 'b', name: 'B1', wanted: 40_000, got: 16_000 }
    const gives = [{ hatchId: 'h', batchId: 'b', nauplii: 16_000 }]
    const day = { gives, batches: [batch], toHatch: 24_000 }
    expect(sayArtemiaDay(day, { hatches: [hatch], voice })).toBe('40,000 wanted, 16,000 from H1, 24,000 to hatch')
    expect(sayArtemiaDay({ ...day, toHatch: 30 }, { hatches: [hatch], voice })).toBe('40,000 wanted, 16,000 from H1')
    expect(sayArtemiaDay({ gives: [], batches: [], toHatch: 0 }, { hatches: [hatch], voice })).toBeNull()
  })
})
