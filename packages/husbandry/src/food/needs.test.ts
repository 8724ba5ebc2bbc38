import type { FoodChange } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { steadyCulture } from '../testing/steady-culture.ts'
import { type EaterAhead, meanWanted } from './eater-ahead.ts'
import { needsAhead } from './needs.ts'
import { appetiteOf } from './rotifer-need.ts'

const today = '2026-03-10'
const futures = 400
const needs = (room: SnapshotBuilder, changes: FoodChange[] = [], days = 10) =>
  needsAhead(room.build(), { horizon: { today, days, futures }, changes, lived: [] })
const middle = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!

test('the mean over futures is that of each day, and nothing without any', () => {
  const eater = (given: number[][]) => ({ futures: given }) as EaterAhead
  expect(
    meanWanted(
      eater([
        [1, 2],
        [3, 6],
      ]),
      2,
    ),
  ).toEqual([2, 4])
  expect(meanWanted(eater([]), 2)).toEqual([0, 0])
})

describe('larvae whose appetite was counted', () => {
  /** On day 1 of life, 200 in 20 L that ate from 10 to 6 per mL in five hours of light: 960 a day each. */
  const room = new SnapshotBuilder()
  const batch = room.batch({ hatchedOn: '2026-03-08', larvae: 200 })
  const count = (time: string, animals: number) =>
    room.fact('count', batch.id, `2026-03-09T${time}:00.000Z`, {
      of: 'prey_rotifers',
      animals: [animals],
      volumeMl: 10,
    })
  count('06:55', 20)
  room.fact('feeding', batch.id, '2026-03-09T07:00:00.000Z', { food: 'rotifers', animals: 160_000 })
  count('12:00', 60)
  const keep = (larvae: number): FoodChange[] => [{ kind: 'keep_larvae', subjectId: batch.id, larvae }]
  const [all, half, quarter] = [keep(200), keep(100), keep(50)].map((changes) => needs(room, changes).eaters[0]!)
  /** What a hundred more of them want, in each future on a day. */
  const moreOn = (day: number) => all!.futures.map((future, index) => future[day]! - half!.futures[index]![day]!)

  test('want as many times more as they are more', () => {
    expect([all, half, quarter].map((each) => each!.larvae)).toEqual([200, 100, 50])
    for (const day of [0, 3, 9])
      for (const [future, more] of moreOn(day).entries())
        expect(more).toBeCloseTo(2 * (half!.futures[future]![day]! - quarter!.futures[future]![day]!), 3)
    // So many as there are at most.
    expect(needs(room, keep(900)).eaters[0]!.larvae).toBe(200)
    expect(needs(room).eaters[0]).toMatchObject({ larvae: 200, kind: 'larval_batch', nights: [] })
  })

  test('want today what was counted, as sure as that is', () => {
    const { logSd, perLarvaPerDay } = appetiteOf(
      room.build(),
      batch,
      husbandryDay({ room: room.snapshot.room, date: today }),
    )!
    expect(perLarvaPerDay).toBeCloseTo(960, 6)
    // The upper end of its interval is 1.96 of its standard errors away.
    expect(logSd).toBeLessThan(1)
    const logs = moreOn(0).map((more) => Math.log(more / 96_000))
    const mean = logs.reduce((sum, each) => sum + each, 0) / futures
    expect(Math.abs(mean)).toBeLessThan((4 * logSd) / Math.sqrt(futures))
    const sd = Math.sqrt(logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / futures)
    expect(Math.abs(sd / logSd - 1)).toBeLessThan(4 / Math.sqrt(2 * futures))
  })

  test('dwindle evenly until day 5, to 64 of a hundred in the middle future (Murray et al. 2025), and no more', () => {
    // Tomorrow is day 2: 1 - 0.4 (1 - s) of them are left, and s from day 5 on.
    const shares = moreOn(4).map((more, future) => {
      const left = more / moreOn(1)[future]!
      return (0.6 * left) / (1 - 0.4 * left)
    })
    expect(Math.abs(middle(shares) - 0.64)).toBeLessThan(0.045)
    for (const [future, more] of moreOn(8).entries()) expect(more).toBeCloseTo(moreOn(4)[future]!, 3)
    for (const [future, more] of moreOn(2).entries())
      expect(more).toBeCloseTo((moreOn(1)[future]! + moreOn(3)[future]!) / 2, 3)
  })
})

test('larvae that hatch tonight eat from tomorrow on; those that are all dead, or of nobody’s profile, never', () => {
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date: today })
  const pods = room.culture({ kind: 'copepod', strain: null, startedAt: '2026-02-01T12:00:00.000Z' })
  const batch = room.batch({ hatchedOn: today })
  for (const each of [pods, culture]) room.feedLink(batch, each)
  const dead = room.batch({ hatchedOn: '2026-03-08', larvae: 50 })
  room.fact('loss', dead.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 50, cause: 'other' })
  room.batch({ hatchedOn: '2026-03-08', larvae: 50, species: 'nobody-knows' })
  const { eaters } = needs(room)
  expect(eaters.map(({ id, larvae, fedFrom }) => [id, larvae, fedFrom])).toEqual([[batch.id, null, [culture.id]]])
  const wanted = meanWanted(eaters[0]!, 3)
  expect(wanted[0]).toBe(0)
  // The first day fills the water to 5 per mL besides.
  const [future] = eaters[0]!.futures
  expect(future![1]! - future![2]!).toBeCloseTo((future![2]! * 5) / 15, 3)
})

test('pairs more lay on any day of their interval, each by its own luck', () => {
  const room = new SnapshotBuilder()
  const pair = room.pair()
  for (const date of ['2026-02-13', '2026-02-27'])
    room.clutch(pair, { spawnedAt: `${date}T12:00:00.000Z`, eggs: 400, intent: 'leave_with_parents' })
  const another = { kind: 'another_pair', likePairId: pair.id } as const
  const named = (changes: FoodChange[]) => needs(room, changes, 42).eaters.filter(({ kind }) => kind === 'spawning')
  const first = (ids: EaterAhead[]) => ids.filter(({ id }) => id.startsWith('spawning 1 '))
  expect(
    first(named([another, { ...another, likePairId: 'other' }, another])).map(({ id, name }) => [id, name]),
  ).toEqual([
    [`spawning 1 ${pair.id}`, pair.name],
    [`spawning 1 another 1 ${pair.id}`, `another pair like ${pair.name}`],
    [`spawning 1 another 2 ${pair.id}`, `another pair like ${pair.name}`],
  ])
  const [, one, two] = first(named([another, another]))
  expect(one!.futures).not.toEqual(two!.futures)
  // Laid on any of some 14 days alike: over so many nights and no others, none of them likelier than twice its part.
  const nights = one!.nights.filter(({ probability }) => probability > 0.02)
  expect(nights.length).toBeGreaterThan(11)
  expect(Math.max(...nights.map(({ probability }) => probability))).toBeLessThan(2 / 14)
})
