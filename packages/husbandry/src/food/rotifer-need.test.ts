import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { appetites, keptLarvae, largestEmptyTankL, type NeedBasis } from './need-basis.ts'
import { appetiteOf, doubtOf, rotifersWanted } from './rotifer-need.ts'

const habits = {
  targetPerMl: 10,
  refillUnderPerMl: 4,
  mostPerMl: 15,
  mostWhenEatenPerMl: 20,
  feedsPerDay: 3,
  sievingLoss: 0.1,
}
const mouths = { volumeL: 20, larvae: 200, isFirstDay: false, changedShare: 0 }

describe('rotifers that a tank wants in a day', () => {
  // Worked out by hand for 20 L, which are 20,000 mL.
  test('are what each feed brings back where nobody has counted what is eaten, whoever swims in it', () => {
    expect(rotifersWanted(habits, null, mouths)).toBe(3 * 6 * 20_000)
    expect(rotifersWanted(habits, { perLarvaPerDay: 5000, logSd: 0.1 }, { ...mouths, larvae: null })).toBe(360_000)
    // The first day fills it from nothing.
    expect(rotifersWanted(habits, null, { ...mouths, isFirstDay: true })).toBe(360_000 + 4 * 20_000)
    const low = { ...habits, targetPerMl: 3 }
    expect(rotifersWanted(low, null, mouths)).toBe(0)
    expect(rotifersWanted(low, null, { ...mouths, isFirstDay: true })).toBe(60_000)
  })

  test('are what is eaten and what leaves with the water where somebody has', () => {
    const appetite = { perLarvaPerDay: 1000, logSd: 0.1 }
    expect(rotifersWanted(habits, appetite, mouths)).toBe(200_000)
    // A quarter of the water holds a quarter of 10 per mL.
    expect(rotifersWanted(habits, appetite, { ...mouths, changedShare: 0.25 })).toBe(250_000)
    expect(rotifersWanted(habits, appetite, { ...mouths, isFirstDay: true })).toBe(280_000)
    // However hungry: three feeds of 20 per mL, or of what a room allows at any time.
    const hungry = { ...mouths, larvae: 2000 }
    expect(rotifersWanted(habits, appetite, hungry)).toBe(3 * 20 * 20_000)
    expect(rotifersWanted({ ...habits, mostPerMl: 25 }, appetite, hungry)).toBe(3 * 25 * 20_000)
  })
})

describe('what larvae here eat', () => {
  const date = '2026-03-10'
  const day = (room: SnapshotBuilder) => husbandryDay({ room: room.snapshot.room, date })
  /** 200 larvae in 20 L that were fed up to 10 per mL at seven and are counted at noon. */
  const eating = (room: SnapshotBuilder, leftPerMl: number | null) => {
    const batch = room.batch({ hatchedOn: '2026-03-07', larvae: 200 })
    const count = (time: string, perMl: number) =>
      room.fact('count', batch.id, `2026-03-09T${time}:00.000Z`, {
        of: 'prey_rotifers',
        animals: [perMl * 10],
        volumeMl: 10,
      })
    if (leftPerMl === null) return batch
    count('06:55', 2)
    room.fact('feeding', batch.id, '2026-03-09T07:00:00.000Z', { food: 'rotifers', animals: 160_000 })
    count('12:00', leftPerMl)
    return batch
  }

  test('is learned of each batch; of any other it is the mean of those', () => {
    const room = new SnapshotBuilder()
    // From 10 to 6 and to 8 per mL in five hours of light: 80 and 40 an hour for each of 200, and as much more by night as is known: nothing.
    const [hungry, slow, unknown] = [eating(room, 6), eating(room, 8), eating(room, null)]
    const appetiteIn = appetites(room.build(), day(room))
    const perDay = [hungry, slow, unknown, null].map((batch) => appetiteIn(batch)!.perLarvaPerDay)
    expect(perDay[0]).toBeCloseTo(12 * 80, 6)
    expect(perDay[1]).toBeCloseTo(12 * 40, 6)
    expect(perDay[2]).toBeCloseTo(12 * 60, 6)
    expect(perDay[3]).toBeCloseTo(12 * 60, 6)
    const doubts = [hungry, slow, null].map((batch) => doubtOf(appetiteIn(batch)))
    expect(doubts[2]).toBeCloseTo((doubts[0]! + doubts[1]!) / 2, 9)
    for (const doubt of doubts) expect(doubt > 0 && doubt <= 1).toBe(true)
    expect(appetiteOf(room.build(), hungry, day(room))).toEqual(appetiteIn(hungry))
  })

  test('is nothing anybody knows where none was counted, and a batch of its own speaks for the next', () => {
    const room = new SnapshotBuilder()
    const batch = eating(room, null)
    const unknown = appetites(room.build(), day(room))
    expect([unknown(null), unknown(batch)]).toEqual([null, null])
    // Three in ten either way (assumption of the rule).
    expect(doubtOf(null)).toBe(0.3)
    eating(room, 6)
    expect(appetites(room.build(), day(room))(batch)?.perLarvaPerDay).toBeCloseTo(960, 6)
  })
})

test('larvae still to hatch have the largest larval tank in which none live', () => {
  const room = new SnapshotBuilder()
  expect(largestEmptyTankL(room.build())).toBeNull()
  const full = room.tank({ volumeL: 90 })
  const batch = room.batch({ hatchedOn: '2026-03-08', larvae: 200, tankId: full.id })
  room.tank({ kind: 'grow_out', volumeL: 120 })
  expect(largestEmptyTankL(room.build())).toBeNull()
  room.tank({ volumeL: 40 })
  expect(largestEmptyTankL(room.build())).toBe(40)
  room.tank({ volumeL: 60 })
  room.tank({ volumeL: 30 })
  expect(largestEmptyTankL(room.build())).toBe(60)
  room.fact('loss', batch.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 200, cause: 'other' })
  expect(largestEmptyTankL(room.build())).toBe(90)
})

test('of what is kept the last word counts, for a batch also what was said of its clutch', () => {
  const kept = (...said: [string, number][]) =>
    keptLarvae(
      {
        changes: said.map(([subjectId, larvae]) => ({ kind: 'keep_larvae', subjectId, larvae })),
      } as Pick<NeedBasis, 'changes'> as NeedBasis,
      ['batch', 'clutch'],
    )
  expect(kept()).toBe(Number.POSITIVE_INFINITY)
  expect(kept(['another', 10])).toBe(Number.POSITIVE_INFINITY)
  expect(kept(['clutch', 200], ['batch', 100], ['another', 10])).toBe(100)
})
