import { type Random, seededRandom } from '@fryward/live-feed'
import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { type BatchLived, livedInPast, livedToday } from './batch-lived.ts'
import { drawSurvival, medianSurvival, shareLeft, survivalAhead } from './larvae-ahead.ts'

const species = 'amphiprion-ocellaris'
const today = '2026-03-10'
const at = (date: string, time = '12:00') => `${date}T${time}:00.000Z`

/** A batch of 400 of which 300 were moved out on day 6 and 20 died on the day. */
function movedBatch(room: SnapshotBuilder) {
  const batch = room.batch({ hatchedOn: '2026-03-01', larvae: 400 })
  const group = room.group({ settledOn: '2026-03-08' })
  room.fact('transfer', batch.id, at('2026-03-08'), { number: 300, toSubjectId: group.id })
  room.fact('loss', batch.id, at('2026-03-08'), { of: 'larvae', number: 20, cause: 'other' })
  return batch
}

describe('what became of larvae', () => {
  test('of today: who died at any time, of those that were not taken out before anybody could tell', () => {
    const room = new SnapshotBuilder()
    expect(livedToday(room.build(), today)).toEqual([])
    const batch = room.batch({ hatchedOn: '2026-03-01', larvae: 400 })
    room.fact('loss', batch.id, at('2026-03-07'), { of: 'larvae', number: 320, cause: 'other' })
    movedBatch(room)
    const halved = room.batch({ hatchedOn: '2026-03-01', larvae: 400 })
    room.fact('outcome', halved.id, at('2026-03-03'), { outcome: 'placed', number: 200 })
    room.fact('loss', halved.id, at('2026-03-05'), { of: 'larvae', number: 10, cause: 'other' })
    // Too young to tell.
    room.batch({ hatchedOn: '2026-03-06', larvae: 400 })
    expect(livedToday(room.build(), today)).toEqual([
      { species, lived: 80, watched: 400 },
      { species, lived: 380, watched: 400 },
      { species, lived: 190, watched: 200 },
    ])
  })

  test('of batches that ended: nobody found those still on the book, unless nobody told what became of any', () => {
    const room = new SnapshotBuilder()
    const moved = movedBatch(room)
    const untold = room.batch({ hatchedOn: '2026-02-01', larvae: 400 })
    const allDied = room.batch({ hatchedOn: '2026-02-01', larvae: 50 })
    room.fact('loss', allDied.id, at('2026-02-04'), { of: 'larvae', number: 50, cause: 'other' })
    const { facts } = room.build()
    const past = (...batches: (typeof moved)[]) => livedInPast({ timeZone: 'UTC', facts, batches })
    expect(past(moved)).toEqual([{ species, lived: 300, watched: 400 }])
    expect(past(untold)).toEqual([])
    expect(past(allDied)).toEqual([{ species, lived: 0, watched: 50 }])
  })
})

const seen = (lived: number, watched: number): BatchLived => ({ species, lived, watched })

describe('what the next batch may live through', () => {
  test('is what is published where nothing was seen, and falls evenly over the first days', () => {
    expect(medianSurvival(survivalAhead(species, []))).toBeCloseTo(0.64, 9)
    expect(medianSurvival(survivalAhead(species, [{ ...seen(1, 400), species: 'elacatinus-figaro' }]))).toBeCloseTo(
      0.64,
    )
    expect([0, 1, 5, 9].map((day) => Number(shareLeft(day, 0.6).toFixed(2)))).toEqual([1, 0.92, 0.6, 0.6])
  })

  test('is by kind: as published of it, of another clownfish, else between clownfish and a goby', () => {
    const median = (of: string) => Number(medianSurvival(survivalAhead(of, [])).toFixed(9))
    // Chinese J. Oceanol. Limnol. (900 lx); Aquacult. Int. 2016 (60 to 66 %); Shei 2008 (2 to 20 %, middle by ratio).
    expect(['amphiprion-percula', 'amphiprion-clarkii', 'elacatinus-figaro'].map(median)).toEqual([0.655, 0.63, 0.08])
    // Ajith Kumar et al. 2010, Indian J. Mar. Sci. 39:114-119: 55 % in A. sebae.
    expect(['amphiprion-frenatus', 'premnas-biaculeatus'].map(median)).toEqual([0.55, 0.55])
    expect(['pseudochromis-fridmani', 'nobody-knows'].map(median)).toEqual([0.3, 0.3])
    expect(shareLeft(-2, 0.6)).toBe(1)
  })

  test('is by hand: three batches of what is published, and one of 80 in 400', () => {
    // Log-odds of 0.64 are 0.5754, of 80.5 to 320.5 they are -1.3816: (3 * 0.5754 - 1.3816) / 4 = 0.0861.
    const ahead = survivalAhead(species, [seen(80, 400)])
    expect(ahead.middle).toBeCloseTo(0.0861, 3)
    // (6 * 0.65^2 + 3 / 4 * 1.957^2) / 7 = 0.7724, and its own mean is as sure as four batches: sqrt(0.7724 * 1.25).
    expect(ahead.scale).toBeCloseTo(0.9826, 3)
    expect(ahead.freedom).toBe(7)
  })

  test('stands where none or all lived', () => {
    // Half an animal more of each (Haldane 1956; Anscombe 1956): one of one is ln 3, none of one as much under 0.
    const prior = 3 * Math.log(0.64 / 0.36)
    expect(survivalAhead(species, [seen(1, 1)]).middle).toBeCloseTo((prior + Math.log(3)) / 4, 12)
    expect(survivalAhead(species, [seen(0, 1)]).middle).toBeCloseTo((prior - Math.log(3)) / 4, 12)
    for (const batch of [seen(0, 50), seen(50, 50)]) {
      const share = medianSurvival(survivalAhead(species, [batch, batch, batch]))
      expect(share).toBeGreaterThan(0)
      expect(share).toBeLessThan(1)
    }
  })
})

const logOdds = (share: number) => Math.log(share / (1 - share))
const shareOf = (odds: number) => 1 / (1 + Math.exp(-odds))

test('a survival is drawn by Student’s t of 7 degrees of freedom (its table: 0.711, 1.415 and 2.365 for 50, 80 and 95 %)', () => {
  const random = seededRandom(3)
  const number = 10_000
  const ahead = { middle: 0.5, scale: 0.9, freedom: 7 }
  const t = Array.from({ length: number }, () => (logOdds(drawSurvival(ahead, random)) - 0.5) / 0.9)
  const within = (of: number) => t.filter((each) => Math.abs(each) < of).length / number
  for (const [of, share] of [
    [0.711, 0.5],
    [1.415, 0.8],
    [2.365, 0.95],
  ] as const)
    expect(Math.abs(within(of) - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / number))
  expect(Math.abs(t.filter((each) => each > 0).length / number - 0.5)).toBeLessThan(4 * Math.sqrt(0.25 / number))
})

/** Larvae that live, each by a share that the batch draws around what is true of its room. */
function bredIn(room: { middle: number; sd: number }, random: Random): BatchLived {
  const watched = Math.round(50 * 12 ** random.uniform())
  const share = shareOf(room.middle + room.sd * random.normal())
  return seen(Array.from({ length: watched }, random.uniform).filter((drawn) => drawn < share).length, watched)
}

const draws = 400
/** Of drawn survivals the tenth and the ninetieth in a hundred. */
function band(own: readonly BatchLived[], random: Random): [number, number] {
  const ahead = survivalAhead(species, own)
  const drawn = Array.from({ length: draws }, () => drawSurvival(ahead, random)).sort((a, b) => a - b)
  return [drawn[draws / 10]!, drawn[(9 * draws) / 10]!]
}

const rooms = 300
/** Of rooms with so many batches behind them, the share in which the next one came out within its band. */
function covered(batches: number, roomOf: (random: Random) => { middle: number; sd: number }): number {
  const random = seededRandom(11 + batches)
  const within = Array.from({ length: rooms }, () => {
    const room = roomOf(random)
    const own = Array.from({ length: batches }, () => bredIn(room, random))
    const [from, to] = band(own, random)
    const { lived, watched } = bredIn(room, random)
    return lived / watched >= from && lived / watched <= to
  })
  return within.filter(Boolean).length / rooms
}

// Four standard errors of a share of 0.8 over so many rooms.
const fourErrors = 4 * Math.sqrt((0.8 * 0.2) / rooms)

describe('over simulated rooms', () => {
  test.each([0, 2, 10])('with %i batches behind them, four of five next ones lie in the band of 80 %%', (batches) => {
    // Rooms as the prior thinks them: a mean as sure as three batches, a spread as sure as six.
    const roomOf = (random: Random) => {
      const squares = Array.from({ length: 6 }, () => random.normal() ** 2).reduce((sum, each) => sum + each, 0)
      const sd = 0.65 * Math.sqrt(6 / squares)
      return { middle: logOdds(0.64) + (sd / Math.sqrt(3)) * random.normal(), sd }
    }
    expect(Math.abs(covered(batches, roomOf) - 0.8)).toBeLessThan(fourErrors)
  })

  test.each([
    [0.2, 0.4],
    [0.9, 0.4],
    [0.5, 1],
  ])(
    'of a share of %f and a spread of its own it moves there, and ten batches make the band hold again',
    (share, sd) => {
      const random = seededRandom(5)
      const room = { middle: logOdds(share), sd }
      const errors = Array.from({ length: rooms }, () => {
        const own = Array.from({ length: 10 }, () => bredIn(room, random))
        return Math.abs(medianSurvival(survivalAhead(species, own)) - share)
      })
      const meanError = errors.reduce((sum, each) => sum + each, 0) / rooms
      expect(meanError).toBeLessThan(Math.max(0.07, Math.abs(0.64 - share) / 3))
      expect(covered(10, () => room)).toBeGreaterThan(0.8 - fourErrors)
    },
  )
})
