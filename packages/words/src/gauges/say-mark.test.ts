import { expect, test } from 'vitest'
import { sayMark } from './say-mark.ts'

const subject = { id: 'a', kind: 'clutch' as const, name: 'Clutch 3' }
test('a mark says what happened, and to whom where the vessel does not say it', () => {
  expect(sayMark({ kind: 'hatch', subject, alarm: null })).toBe('Hatch: Clutch 3')
  expect(sayMark({ kind: 'water_change', subject, alarm: null })).toBe('Water change')
  expect(sayMark({ kind: 'alarm', subject, alarm: { kind: 'too_high', gaugeId: 'g' } })).toBe('Alarm: too high')
})
