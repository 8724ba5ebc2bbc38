import type { Fact } from '@fryward/husbandry'
import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../../../husbandry/src/testing/snapshot-builder.ts'
import { closedOff } from './close-off.ts'
import { isLasting, windowStart } from './fact-window.ts'
import { nameOrLeft } from './person-name.ts'

test('a room’s facts are known whole for sixty days, from the same moment all through a day', () => {
  // 60 days before 10 March 2026 is 9 January (22 + 28 + 10 days).
  for (const now of ['2026-03-10T00:00:00.000Z', '2026-03-10T23:59:59.999Z'])
    expect(windowStart(now)).toBe('2026-01-09T00:00:00.000Z')
  expect(windowStart('2026-03-11T00:00:00.000Z')).toBe('2026-01-10T00:00:00.000Z')
})

test('what animals live by stays for good: how they came, went and were counted, and what is done a few times a year', () => {
  const lasts = (kind: string, data: object = {}) => isLasting({ kind, data } as Fact)
  for (const kind of ['spawning', 'hatch', 'inoculation', 'transfer', 'loss', 'outcome', 'decision'])
    expect([kind, lasts(kind)]).toEqual([kind, true])
  for (const of of ['eggs', 'larvae', 'juveniles']) expect(lasts('count', { of })).toBe(true)
  for (const act of ['fish_arrived', 'quarantine_empty', 'test_cysts']) expect(lasts('care', { act })).toBe(true)
  expect(lasts('count', { of: 'culture' })).toBe(false)
  expect(lasts('care', { act: 'clean' })).toBe(false)
  for (const kind of ['feeding', 'harvest', 'water_test', 'water_change', 'observation', 'cure'])
    expect([kind, lasts(kind)]).toEqual([kind, false])
})

describe('before that', () => {
  const since = '2026-01-09T00:00:00.000Z'
  const before = '2026-01-08T23:59:59.999Z'
  test('only what is lasting stays, and from then on everything', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: before })
    room.count(culture, before, [60])
    const inoculation = room.fact('inoculation', culture.id, before, { densityPerMl: 60 })
    const count = room.count(culture, since, [70])
    expect(closedOff(room.build(), since).facts.map(({ id }) => id)).toEqual([inoculation.id, count.id])
    // Everything is older than the window of a later day.
    expect(closedOff(room.build(), '2026-02-01T00:00:00.000Z').facts.map(({ id }) => id)).toEqual([inoculation.id])
  })

  test('a clutch stays with its pair, and one whose pair is gone only if it was laid within', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    const gone = { ...pair, id: 'gone' }
    const stays = [room.clutch(pair, { spawnedAt: before }), room.clutch(gone, { spawnedAt: since })]
    const old = room.clutch(gone, { spawnedAt: before })
    const { clutches, facts } = closedOff(room.build(), since)
    expect(clutches.map(({ id }) => id)).toEqual(stays.map(({ id }) => id))
    expect(facts.some(({ subjectId }) => subjectId === old.id)).toBe(false)
  })

  test('how larvae and fish came to what lives stays, though what they came from has ended', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-01-20' })
    const group = room.group({ settledOn: '2026-01-21' })
    const hatch = room.fact('hatch', 'ended clutch', before, { hatchedOn: '2026-01-08', batchId: batch.id, larvae: 90 })
    const moved = room.fact('transfer', 'ended batch', before, { number: 30, toSubjectId: group.id })
    const away = room.fact('transfer', 'ended batch', before, { number: 3, toSubjectId: room.nextId() })
    const unraised = room.fact('hatch', 'ended clutch', before, { hatchedOn: '2026-01-08' })
    const kept = closedOff(room.build(), since).facts.map(({ id }) => id)
    expect([hatch, moved, away, unraised].map(({ id }) => kept.includes(id))).toEqual([true, true, false, false])
  })
})

test('who wrote something down is named, also once the account is gone', () => {
  expect([nameOrLeft(null, null), nameOrLeft('ana', 'Ana'), nameOrLeft('ana', null)]).toEqual([
    ...['Fryward', 'Ana', 'somebody who has left'],
  ])
})
