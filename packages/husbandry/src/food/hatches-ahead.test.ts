import { describe, expect, test } from 'vitest'
import { daysBetween, husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import {
  clutchesAhead,
  hatchAfterSpawning,
  nightsAhead,
  pairsToAsk,
  raisedShare,
  spawningsAhead,
} from './hatches-ahead.ts'

const date = '2026-03-10'
const at = (day: string) => `${day}T12:00:00.000Z`
const today = (room: SnapshotBuilder) => husbandryDay({ room: room.snapshot.room, date })
const sum = (nights: readonly { probability: number }[]) =>
  nights.reduce((all, { probability }) => all + probability, 0)

test('of nights that are over nothing is left, and those of today and later are all there is', () => {
  const nights = [
    { date: '2026-03-09', probability: 0.5 },
    { date: '2026-03-10', probability: 0.3 },
    { date: '2026-03-11', probability: 0.1 },
  ]
  expect(nightsAhead(nights, date)).toEqual([
    { date: '2026-03-10', probability: expect.closeTo(0.75, 12) },
    { date: '2026-03-11', probability: expect.closeTo(0.25, 12) },
  ])
  expect([nightsAhead(nights, '2026-03-12'), nightsAhead([{ date, probability: 0 }], date)]).toEqual([[], []])
})

test('clutches ahead are eggs in a nest that are to be raised, of fish that eat rotifers', () => {
  const room = new SnapshotBuilder()
  const pair = room.pair()
  const asked = room.clutch(pair, { spawnedAt: at('2026-03-08'), eggs: 400 })
  room.clutch(pair, { spawnedAt: at('2026-03-08'), eggs: 400, intent: 'leave_with_parents' })
  room.clutch(room.pair({ species: 'hippocampus-erectus' }), { spawnedAt: at('2026-03-08'), eggs: 200 })
  const lost = room.clutch(pair, { spawnedAt: at('2026-03-08'), eggs: 400 })
  room.fact('loss', lost.id, at('2026-03-09'), { of: 'eggs', number: 400, cause: 'other' })
  const { clutches, gaps } = clutchesAhead(room.build(), today(room))
  expect([clutches.map(({ clutch }) => clutch.id), gaps]).toEqual([[asked.id], []])
  expect(sum(clutches[0]!.nights)).toBeCloseTo(1, 12)
})

test('a clutch whose nights cannot be told is a gap that says so', () => {
  const room = new SnapshotBuilder()
  const cold = room.tank({ kind: 'broodstock', temperatureC: 5 })
  room.clutch(room.pair({ tankId: cold.id }), { spawnedAt: at('2026-03-08'), eggs: 400 })
  const { clutches, gaps } = clutchesAhead(room.build(), today(room))
  expect([clutches, gaps.length]).toEqual([[], 1])
})

test('of two clutches that ended one was raised; with one of each besides that is a half, as before any', () => {
  const room = new SnapshotBuilder()
  expect(raisedShare(room.build())).toBe(1 / 2)
  const pair = room.pair()
  const ended = () => room.clutch(pair, { spawnedAt: at('2026-02-08'), eggs: 400 })
  const hatch = (batchId?: string) =>
    room.fact('hatch', ended().id, at('2026-02-16'), { hatchedOn: '2026-02-16', ...(batchId ? { batchId } : {}) })
  hatch(room.batch({ hatchedOn: '2026-02-16' }).id)
  expect(raisedShare(room.build())).toBe(2 / 3)
  // Hatched in its parents' tank nobody raised it.
  hatch()
  room.clutch(pair, { spawnedAt: at('2026-03-08'), eggs: 400 })
  expect(raisedShare(room.build())).toBe(2 / 4)
})

describe('a clutch laid today', () => {
  const hatchAt = (temperatureC: number, species = 'amphiprion-ocellaris') => {
    const room = new SnapshotBuilder()
    const pair = room.pair({ species, tankId: room.tank({ kind: 'broodstock', temperatureC }).id })
    return hatchAfterSpawning(room.build(), pair, today(room))
  }

  test('hatches after six to nine nights at 27 C (Amphiprion ocellaris), where it can be told', () => {
    const nights = hatchAt(27)!
    expect(sum(nights)).toBeCloseTo(1, 6)
    const likely = nights.filter(({ probability }) => probability > 0.1)
    for (const { nights: night } of likely) expect(night >= 5 && night <= 10).toBe(true)
    expect([9.9, 10, 40, 40.1].map((temperatureC) => hatchAt(temperatureC) !== null)).toEqual([
      ...[false, true, true, false],
    ])
    for (const species of ['pterapogon-kauderni', 'hippocampus-erectus', 'nobody-knows'])
      expect(hatchAt(27, species)).toBeNull()
  })

  test('can be asked of a pair in a tank that is known', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    room.pair({ species: 'nobody-knows' })
    const asked = { pairId: pair.id, name: pair.name, firstFood: 'rotifer', eatsRotifers: true }
    expect(pairsToAsk(room.build(), today(room))).toEqual([{ ...asked, isPlanned: true }])
    room.snapshot.tanks[0]!.temperatureC = 5
    expect(pairsToAsk(room.build(), today(room))).toEqual([{ ...asked, isPlanned: false }])
  })
})

describe('the next clutch of a pair', () => {
  const paired = (lastOn: string | null, given = {}) => {
    const room = new SnapshotBuilder()
    const pair = room.pair(given)
    if (lastOn !== null) room.clutch(pair, { spawnedAt: at(lastOn), eggs: 400 })
    return spawningsAhead(room.build(), today(room))
  }

  test('is looked for where it has laid, is not resting, and its young eat rotifers', () => {
    const [ahead] = paired('2026-03-01')
    expect(ahead).toMatchObject({ name: 'Pair 1', key: ahead!.pair.id })
    expect(sum(ahead!.nextDays)).toBeCloseTo(1, 6)
    expect(ahead!.nextDays.every(({ day }) => day >= 0)).toBe(true)
    expect(sum(ahead!.hatch)).toBeCloseTo(1, 6)
    const none = [paired(null), paired('2026-03-01', { isResting: true })]
    expect([...none, paired('2026-03-01', { species: 'hippocampus-erectus' })]).toEqual([[], [], []])
  })

  test('is as many days after the last as it lays from one to the next, and not told of a pair that stopped', () => {
    const [ahead] = paired('2026-03-09')
    const mean = ahead!.nextDays.reduce((all, { day, probability }) => all + day * probability, 0)
    // The mean of a logarithm's normal law, counted from the day on which it last laid.
    const expected = ahead!.interval.medianDays * Math.exp(ahead!.interval.logSd ** 2 / 2)
    expect(Math.abs(mean - expected + daysBetween('2026-03-09', date))).toBeLessThan(1)
    expect(paired('1970-01-02', { species: 'pseudochromis-fridmani' })).toEqual([])
  })

  test('follows its own intervals: a pair that lays each week lays sooner than its species does', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    for (const day of ['2026-02-09', '2026-02-16', '2026-02-23', '2026-03-02', '2026-03-09'])
      room.clutch(pair, { spawnedAt: at(day), eggs: 400 })
    const nextDay = (ahead: ReturnType<typeof spawningsAhead>) =>
      ahead[0]!.nextDays.reduce((all, { day, probability }) => all + day * probability, 0)
    const weekly = spawningsAhead(room.build(), today(room))
    expect(weekly[0]!.interval.medianDays).toBeLessThan(10)
    expect(nextDay(weekly)).toBeLessThan(weekly[0]!.interval.medianDays)
    expect(nextDay(weekly)).toBeLessThan(nextDay(paired('2026-03-09')) - 4)
  })
})
