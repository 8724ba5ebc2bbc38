import { expect, test } from 'vitest'
import { hasShapeOf } from './has-shape-of.ts'

test('what was kept fits a form that begins with the same parts, each of its kind', () => {
  const start = { name: '', samples: [''], isBackup: false, at: undefined }
  expect(hasShapeOf(start, { name: 'R1', samples: ['1', '2'], isBackup: true, at: '07:40' })).toBe(true)
  expect(hasShapeOf(start, { name: 'R1', samples: [], isBackup: true })).toBe(true)
  expect(hasShapeOf(start, { name: 'R1', samples: {}, isBackup: true })).toBe(false)
  expect(hasShapeOf(start, { name: null, samples: [], isBackup: true })).toBe(false)
  expect(hasShapeOf(start, { samples: [], isBackup: true })).toBe(false)
  expect(hasShapeOf(start, undefined)).toBe(false)
  expect(hasShapeOf({}, { salinity: '35' })).toBe(true)
})
