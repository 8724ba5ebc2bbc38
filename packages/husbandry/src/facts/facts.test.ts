import { describe, expect, test } from 'vitest'
import type { Fact } from './fact.ts'
import { headsOf } from './heads.ts'
import { effectsOf } from './index.ts'

const fact = (kind: Fact['kind'], data: object) =>
  ({ kind, data, subjectId: 'here', at: '2026-03-10T08:00:00.000Z' }) as Fact
const vessel = { kind: 'rotifer' as const, volumeL: 10 }
const inCulture = (
  kind: Fact['kind'],
  data: object,
  into: Parameters<NonNullable<ReturnType<typeof effectsOf>['culture']>>[1] = vessel,
) => effectsOf(fact(kind, data)).culture?.(fact(kind, data) as never, into) ?? null
const fallsL = (kind: Fact['kind'], data: object) =>
  effectsOf(fact(kind, data)).waterFallsL?.(fact(kind, data) as never) ?? 0
const lines = (kind: Fact['kind'], data: object) => effectsOf(fact(kind, data)).book?.(fact(kind, data) as never) ?? []

describe('what a fact does to a culture', () => {
  test('taken litres take the animals that swam in them; something always stays behind', () => {
    expect(inCulture('harvest', { volumeL: 2.5 })).toEqual({ way: 'removed', volumeL: 2.5, fraction: 0.25 })
    expect(inCulture('water_change', { removedL: 1, addedL: 3 })).toEqual({ way: 'removed', volumeL: 1, fraction: 0.1 })
    expect(inCulture('harvest', { volumeL: 10 })).toMatchObject({ fraction: 0.999 })
    expect(inCulture('harvest', { volumeL: 12 })).toMatchObject({ fraction: 0.999 })
    expect(inCulture('water_change', { removedL: 0, addedL: 3 })).toBeNull()
    // The sieve holds grown copepods back.
    expect(inCulture('harvest', { volumeL: 2.5 }, { ...vessel, kind: 'copepod' })).toBeNull()
  })
  test('animals put in are as dense as was said, or so many over its litres', () => {
    expect(inCulture('inoculation', { densityPerMl: 60 })).toEqual({ way: 'added', densityPerMl: 60 })
    expect(inCulture('inoculation', { animals: 1e6 })).toEqual({ way: 'added', densityPerMl: 100 })
    expect(inCulture('inoculation', {})).toBeNull()
  })
  test('a count in a volume is its density; of heads, or of anything else, it is none', () => {
    const counted = { of: 'culture', animals: [60, 66], volumeMl: 0.5, dilution: 2 }
    expect(inCulture('count', { ...counted, eggs: 30, females: 120 })).toMatchObject({
      ...{ way: 'counted', densityPerMl: 252, animalsCounted: 126, eggRatio: 0.25, females: 120 },
    })
    expect(inCulture('count', { ...counted, eggs: 30 })).toMatchObject({ eggRatio: null, females: null })
    expect(inCulture('count', { ...counted, females: 120 })).toMatchObject({ eggRatio: null, females: 120 })
    expect(inCulture('count', { ...counted, volumeMl: undefined })).toBeNull()
    expect(inCulture('count', { ...counted, of: 'copepod_nauplii' })).toBeNull()
  })
  test('only a restart begins it anew', () => {
    expect(inCulture('care', { act: 'restart_culture' })).toEqual({ way: 'restarted' })
    expect(inCulture('care', { act: 'brush_walls' })).toBeNull()
  })
})

test('water falls by what is taken and rises by what is put in', () => {
  expect([fallsL('harvest', { volumeL: 2 }), fallsL('water_change', { removedL: 1, addedL: 3 })]).toEqual([2, -2])
  expect(fallsL('feeding', { food: 'rotifers', amountMl: 500 })).toBe(0)
})

describe('what a fact does to books of animals', () => {
  test('whoever leaves one book for another is in neither twice: a transfer adds up to nothing', () => {
    const moved = lines('transfer', { number: 30, toSubjectId: 'there' })
    expect(moved).toEqual([
      { subjectId: 'here', way: 'out', number: 30 },
      { subjectId: 'there', way: 'in', number: 30 },
    ])
  })
  test('deaths and outcomes leave it, and a life begins with eggs or larvae as far as anybody counted', () => {
    for (const kind of ['loss', 'outcome'] as const)
      expect(lines(kind, { number: 4 })).toEqual([{ subjectId: 'here', way: 'out', number: 4 }])
    expect(lines('spawning', { eggs: 300 })).toEqual([{ subjectId: 'here', way: 'begin', number: 300 }])
    expect(lines('spawning', {})).toEqual([{ subjectId: 'here', way: 'begin', number: null }])
    expect(lines('hatch', { batchId: 'tank', larvae: 200 })).toEqual([{ subjectId: 'tank', way: 'begin', number: 200 }])
    expect(lines('hatch', {})).toEqual([{ subjectId: 'here', way: 'begin', number: null }])
  })
  test('heads counted again and again are one number, and a sample of larvae is none', () => {
    expect(headsOf({ animals: [10, 12, 14] })).toBe(12)
    expect(lines('count', { of: 'larvae', animals: [10, 12] })).toMatchObject([
      { way: 'count', number: 11, of: 'larvae' },
    ])
    expect(lines('count', { of: 'larvae', animals: [3], volumeMl: 100 })).toEqual([])
    expect(lines('count', { of: 'juveniles', animals: [30] })).toMatchObject([{ way: 'count', number: 30 }])
  })
})
