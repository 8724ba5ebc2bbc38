import type { Fact } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { mergePages } from '@/parts/facts/merge-pages.ts'
import { toTimeline } from './timeline.ts'

const base = {
  subjectId: 'batch',
  subjectKind: 'larval_batch' as const,
  receivedAt: '2026-11-25T18:00:00.000Z',
  recordedByName: 'Carla',
  taskId: null,
  struckByName: null,
  struckReason: null,
  revision: 1,
}
const feeding = (at: string, struckAt: string | null = null): Fact => ({
  ...base,
  ...{ id: `feeding ${at}`, at, struckAt, kind: 'feeding', data: { food: 'rotifers', amountMl: 100 } },
})
const count = (at: string): Fact => ({
  ...base,
  ...{ id: `count ${at}`, at, struckAt: null, kind: 'count' },
  data: { of: 'prey_rotifers', animals: [60], volumeMl: 10, dilution: 1 },
})
const whole = { timeZone: 'Europe/Lisbon', hasOlder: false, isFolding: true }
const shape = (facts: Fact[], options = whole) =>
  toTimeline(facts, options).map(({ date, lines }) => [
    date,
    ...lines.map((line) => (line.kind === 'fact' ? line.fact.id : `${line.facts.length} feedings`)),
  ])

const evening = '2026-11-25T18:00:00.000Z'
const noon = '2026-11-25T12:00:00.000Z'
const morning = '2026-11-25T07:00:00.000Z'
const dayBefore = '2026-11-24T12:00:00.000Z'

describe('the timeline of a thing', () => {
  it('puts records under the days of the room’s own clock', () => {
    const late = '2026-11-24T23:30:00.000Z'
    expect(shape([count(late)])).toEqual([['2026-11-24', `count ${late}`]])
    expect(shape([count(late)], { ...whole, timeZone: 'Asia/Tokyo' })).toEqual([['2026-11-25', `count ${late}`]])
  })

  it('folds the feedings of a day where the latest of them stood, and leaves a lone one', () => {
    const facts = [feeding(evening), count(noon), feeding(morning), feeding(dayBefore)]
    expect(shape(facts)).toEqual([
      ['2026-11-25', '2 feedings', `count ${noon}`],
      ['2026-11-24', `feeding ${dayBefore}`],
    ])
  })

  it('keeps a struck-out feeding apart from the fold, in sight', () => {
    expect(shape([feeding(evening), feeding(noon, evening), feeding(morning)])).toEqual([
      ['2026-11-25', '2 feedings', `feeding ${noon}`],
    ])
  })

  it('sums nothing up on a day that the end of a page has cut', () => {
    expect(shape([feeding(evening), feeding(morning)], { ...whole, hasOlder: true })).toEqual([
      ['2026-11-25', `feeding ${evening}`, `feeding ${morning}`],
    ])
  })
})

describe('pages of several kinds as one', () => {
  it('end where the shortest ends, so that nothing is skipped', () => {
    const merged = mergePages([
      { facts: [feeding(evening), feeding(noon)], nextBefore: noon },
      { facts: [count(morning)], nextBefore: null },
    ])
    expect(merged.facts.map((fact) => fact.id)).toEqual([`feeding ${evening}`, `feeding ${noon}`])
    expect(merged.nextBefore).toBe(noon)
  })

  it('are the last page once every kind has come to its end, newest first', () => {
    const merged = mergePages([
      { facts: [feeding(noon)], nextBefore: null },
      { facts: [count(evening), count(morning)], nextBefore: null },
    ])
    expect(merged.facts.map((fact) => fact.at)).toEqual([evening, noon, morning])
    expect(merged.nextBefore).toBeNull()
  })
})
