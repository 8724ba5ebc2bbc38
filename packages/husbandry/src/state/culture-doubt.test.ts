import { expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { doubtAbout } from './culture-doubt.ts'

test('a culture is doubted for a day after it smelt, sank, clumped or swam slowly, until somebody finds it well', () => {
  const doubted = (...looks: [string, string[]][]) => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    for (const [at, signs] of looks)
      room.fact('observation', culture.id, `2026-03-${at}:00.000Z`, { signs: signs as never, note: 'looked' })
    return doubtAbout(room.build(), culture, husbandryDay({ room: room.snapshot.room, date: '2026-03-10' })) !== null
  }
  for (const sign of ['swimming_slow', 'sinking', 'clumping', 'bad_smell'])
    expect(doubted(['10T08:00', [sign]])).toBe(true)
  expect(doubted()).toBe(false)
  expect(doubted(['10T08:00', []])).toBe(false)
  expect(doubted(['10T08:00', ['swimming_well', 'bad_smell']])).toBe(true)
  expect(doubted(['10T08:00', ['bad_smell']], ['10T12:00', ['swimming_well']])).toBe(false)
  expect(doubted(['10T08:00', ['bad_smell']], ['10T12:00', ['all_well']])).toBe(false)
  expect(doubted(['10T08:00', ['all_well']], ['10T12:00', ['sinking']])).toBe(true)
  // A look that says neither ends no doubt.
  expect(doubted(['10T08:00', ['bad_smell']], ['10T12:00', []])).toBe(true)
  // Of the day before it still speaks, of the one before that no more; tomorrow's is not known yet.
  expect([doubted(['09T00:00', ['sinking']]), doubted(['08T23:59', ['sinking']])]).toEqual([true, false])
  expect(doubted(['11T00:00', ['sinking']])).toBe(false)
})
