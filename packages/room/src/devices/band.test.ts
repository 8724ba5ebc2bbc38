import { expect, test } from 'vitest'
import { RoomError } from '../errors.ts'
import { assertBand } from './band.ts'

/** Which end of a band is refused; null where the band holds. */
function refusedEnd(...given: Parameters<typeof assertBand>): string | null {
  try {
    assertBand(...given)
    return null
  } catch (error) {
    if (error instanceof RoomError) return error.fields?.[0]?.path ?? 'nothing'
    throw error
  }
}

test('a band has its upper end above the lower one, both where the probe can read', () => {
  expect(refusedEnd('temperature', { low: 24, high: 28 })).toBeNull()
  expect(refusedEnd('temperature', {})).toBeNull()
  expect(refusedEnd('temperature', { low: -5, high: 60 })).toBeNull()
  expect(refusedEnd('temperature', { low: 0 })).toBeNull()
  expect(refusedEnd('temperature', { high: 28, low: null })).toBeNull()
  expect([refusedEnd('temperature', { high: -1 }), refusedEnd('temperature', { low: 1 })]).toEqual([null, null])
  expect(refusedEnd('temperature', { low: 28, high: 24 })).toBe('high')
  expect(refusedEnd('temperature', { low: 28, high: 28 })).toBe('high')
  expect(refusedEnd('temperature', { low: -5.1 })).toBe('low')
  expect(refusedEnd('temperature', { low: 60.1 })).toBe('low')
  expect(refusedEnd('temperature', { high: 60.1 })).toBe('high')
  expect(refusedEnd('ph', { low: 7.8, high: 14.1 })).toBe('high')
})

test('a refused end says between what it may lie, or that it is the wrong way round', () => {
  expect(() => assertBand('temperature', { low: -6 })).toThrow('Give a limit between -5 and 60.')
  expect(() => assertBand('temperature', { low: 28, high: 24 })).toThrow('The upper limit is above the lower one.')
})
