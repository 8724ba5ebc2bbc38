import { describe, expect, test } from 'vitest'
import { parseTaskKey, taskKey } from '../engine/task-key.ts'
import { rotiferFeed } from '../rules/live-food/rotifer-feed.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import {
  assumption,
  commonPractice,
  fromMemory,
  parameterSchema,
  published,
  resolveParameters,
  sourceText,
} from './parameters.ts'
import { ruleInForce } from './rule-in-force.ts'

describe('a rule’s parameters', () => {
  test('are their defaults until the room changes one, and again when its change no longer fits', () => {
    const values = (changes: Record<string, unknown>) => resolveParameters(rotiferFeed.parameters, changes)
    expect(values({})).toMatchObject({ cellsPerRotiferPerDay: 75_000, feedsPerDay: 2, followsWater: true })
    expect(values({ feedsPerDay: 3 })).toMatchObject({ feedsPerDay: 3 })
    expect(values({ feedsPerDay: 99, followsWater: 'no' })).toMatchObject({ feedsPerDay: 2, followsWater: true })
  })

  test('outside their limits, or unknown, are refused', () => {
    const schema = parameterSchema(rotiferFeed.parameters)
    expect(schema.safeParse({ feedsPerDay: 3 }).success).toBe(true)
    expect(schema.safeParse({ feedsPerDay: 0 }).success).toBe(false)
    expect(schema.safeParse({ feeds: 3 }).success).toBe(false)
  })

  test('say where they come from and whether the room has changed them', () => {
    const room = new SnapshotBuilder()
    room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    room.count(culture, '2026-03-10T06:30:00.000Z', [260])
    const origin = () =>
      room
        .drafts('2026-03-10', [rotiferFeed])
        .drafts[0]?.content.because.find((link) => link.label === 'for a full ration')?.origin
    expect(origin()).toMatchObject({ kind: 'parameter', isChanged: false })
    room.setting('rotifer-feed', { parameters: { cellsPerRotiferPerDay: 50_000 } })
    expect(origin()).toMatchObject({ parameter: 'cellsPerRotiferPerDay', isChanged: true })
  })

  test('a rule that is switched off asks for nothing', () => {
    const room = new SnapshotBuilder()
    room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    room.count(culture, '2026-03-10T06:30:00.000Z', [260])
    room.setting('rotifer-feed', { isOn: false })
    expect(room.drafts('2026-03-10', [rotiferFeed])).toEqual({ drafts: [], gaps: [] })
    expect(ruleInForce(room.snapshot, rotiferFeed).isOn).toBe(false)
  })

  test('a source says of itself what it is', () => {
    expect(sourceText(published('A & B 2000'))).toBe('A & B 2000')
    expect(sourceText(commonPractice())).toBe('common practice')
    expect(sourceText(fromMemory('C 1999'))).toBe('C 1999 (from memory)')
    expect(sourceText(assumption('as for D'))).toBe('as for D (assumption)')
  })
})

describe('a task’s key', () => {
  const parts = {
    ruleId: 'rotifer-feed',
    subjectId: '00000000-0000-7000-8000-000000000001',
    onDate: '2026-03-10',
    roundId: 'morning',
    ordinal: 2,
  }
  test('is read back as it was written', () => {
    expect(taskKey(parts)).toBe('rotifer-feed/00000000-0000-7000-8000-000000000001/2026-03-10/morning/2')
    expect(parseTaskKey(taskKey(parts))).toEqual(parts)
  })
  test('of another grammar is refused with what is expected', () => {
    expect(() => parseTaskKey('rotifer-feed/morning')).toThrow(/expected rule\/subject\/date\/round\/ordinal/)
  })
})
