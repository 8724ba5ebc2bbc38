import { expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { type BroodReview, reviewBroods } from './brood-review.ts'

const only = (room: BroodRoom, today: number): BroodReview => {
  const reviews = reviewBroods(room.review(today))
  expect(reviews).toHaveLength(1)
  return reviews[0]!
}
/** Day, number and error of every count in its ledger. */
const counts = ({ ledger }: BroodReview) =>
  ledger?.flatMap(({ kind, day, animals, standardError }) => (kind === 'count' ? [[day, animals, standardError]] : []))
const lost = ({ stages }: BroodReview, name: string) => stages.find(({ stage }) => stage === name)!.lost

test('larvae of two nights in two tanks are there each from their own morning', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const [first, second] = [room.batch(8, [clutch], 60), room.batch(9, [clutch], 30)]
  expect([8, 9].map((day) => only(room, day).numberNow)).toEqual([60, 90])
  room.count(13, first!, 'larvae', 50)
  room.count(13, second!, 'larvae', 25)
  const review = only(room, 13)
  expect(review.ledger).toMatchObject([
    { day: 0, kind: 'count', animals: 60 },
    { day: 1, kind: 'movedIn', animals: 30 },
    { day: 5, kind: 'count', animals: 75 },
  ])
  expect(review.missing).toBe(60 + 30 - 75)
})

test('a first night that is written down after the second was there before it', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const batch = room.batch(9, [clutch], 30)
  const ofFirst = { hatchedOn: room.dateOf(7), larvae: 60, batchId: batch.id }
  room.builder.fact('hatch', clutch.id, room.at(9, '20:00'), ofFirst)
  expect([8, 9].map((day) => only(room, day).numberNow)).toEqual([60, 90])
})

test('larvae of a night that were put among others are neither there nor missing', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const others = room.builder.batch({ hatchedOn: room.dateOf(5), larvae: 50 })
  const amongOthers = (night: number, larvae: number) =>
    room.builder.fact('hatch', clutch.id, room.at(night + 1), {
      ...{ hatchedOn: room.dateOf(night), larvae, batchId: others.id },
    })
  amongOthers(6, 10)
  const batch = room.batch(8, [clutch], 60)
  amongOthers(8, 20)
  room.count(13, batch, 'larvae', 55)
  const review = only(room, 14)
  // Of 90 that hatched 30 went to the others, and of 60 there are 55.
  expect([review.missing, lost(review, 'day_5')]).toEqual([5, 5])
  // Its own were born on the second of three mornings.
  expect(review.book.bornOn).toBe(room.dateOf(8))
})

test('more dead on the first morning than were said to have hatched: the number was short by as many', () => {
  const room = new BroodRoom()
  room.lose(8, room.batch(8, [room.clutch(0, 90)], 50), 60)
  const { ledger, missing } = only(room, 9)
  expect(ledger).toEqual([
    { day: 0, kind: 'count', animals: 50, standardError: 10 },
    { day: 0, kind: 'loss', animals: 60 },
  ])
  expect(missing).toBe(0)
})

test('those who died on the day of a later count were gone when it was made', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 100)], 50)
  room.lose(13, batch, 60)
  room.count(13, batch, 'larvae', 40)
  // Of 50 there died 60: the first number was short by ten, and the second is none the worse for it.
  expect(counts(only(room, 14))).toEqual([
    [0, 50, 10],
    [5, 40, 0],
  ])
})

test('those who died on the morning of a second night may have been of that night', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const batch = room.batch(8, [clutch], 50)
  room.builder.fact('hatch', clutch.id, room.at(9, '08:00'), {
    ...{ hatchedOn: room.dateOf(8), batchId: batch.id, larvae: 30 },
  })
  room.lose(9, batch, 70)
  expect(counts(only(room, 10))).toEqual([[0, 50, 0]])
})

test('where a count was the first number, what is told of by the end of its day is in it', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0)])
  room.lose(12, batch, 2)
  room.lose(13, batch, 3)
  room.count(13, batch, 'larvae', 50)
  room.lose(14, batch, 4)
  const { ledger, book } = only(room, 20)
  expect(ledger).toEqual([
    { day: 5, kind: 'count', animals: 50, standardError: 0 },
    { day: 6, kind: 'loss', animals: 4 },
  ])
  expect(book.countedOn).toEqual([room.dateOf(13)])
})

test('on the day on which others came to them they are there no more', () => {
  const room = new BroodRoom()
  const [batch, others] = [room.batch(8, [room.clutch(0, 60)], 50), room.batch(8, [room.clutch(1, 60)], 40)]
  room.move(20, others!, batch!, 10)
  const nowOn = (day: number) => reviewBroods(room.review(day)).map(({ numberNow }) => numberNow)
  expect([nowOn(19), nowOn(20)]).toEqual([
    [50, 40],
    [0, 30],
  ])
})

test('they left for others, or others came to them, and the first of these days is told', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 80)
  const others = room.batch(9, [room.clutch(1, 60)], 40)
  const group = room.group(20, batch)
  room.move(20, batch, group, 30)
  room.move(22, batch, others, 10)
  room.move(25, others, group, 5)
  room.move(26, batch, group, 15)
  room.move(30, others, batch, 5)
  const { book, mixedOn } = reviewBroods(room.review(40))[0]!
  expect(book.departures.map(({ on, kind, number }) => [on, kind, number])).toEqual([
    [room.dateOf(22), 'moved', 10],
    [room.dateOf(25), 'mixed', 30],
    [room.dateOf(26), 'mixed', 15],
    // 80 less all that were moved.
    [room.dateOf(30), 'mixed', 25],
  ])
  expect(mixedOn).toBe(room.dateOf(25))
})

test('a single one is followed no further like the many', () => {
  const room = new BroodRoom()
  const [batch, others] = [room.batch(8, [room.clutch(0, 60)], 1), room.batch(8, [room.clutch(1, 60)], 40)]
  room.move(20, others!, batch!, 10)
  expect(reviewBroods(room.review(20))[0]!.book.departures).toMatchObject([{ kind: 'mixed', number: 1 }])
})

/** Errors by hand: of n counted in a tenth the root of 10 n, of repeats their standard deviation over the root of how many. */
test('a number is off by as much as what it was reckoned from', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 400), room.clutch(0, 400)], 300)
  room.eat(batch, 'rotifers', 'R1', { from: 8, to: 12 })
  room.lose(10, batch, 10)
  room.count(13, batch, 'larvae', 200)
  // How many of them have turned is no count of them.
  room.count(13, batch, 'juveniles', 5)
  room.lose(15, batch, 20)
  const group = room.group(20, batch)
  room.move(20, batch, group, 60)
  room.count(22, group, 'juveniles', 48, 52)
  room.lose(23, group, 1)
  const review = only(room, 30)
  const { book, stages } = review
  // Two clutches in one tank are one number; Garwood's interval of 30 is 20.24 to 42.83.
  const ofHatch = { lower: 202, upper: 428 }
  expect(stages.slice(1, 3).map(({ interval }) => interval)).toEqual([ofHatch, ofHatch])
  expect(book.numberOn(room.dateOf(10))).toEqual({
    ...{ number: 290, standardError: Math.sqrt(3000), interval: { lower: 192, upper: 418 } },
  })
  expect(book.numberOn(room.dateOf(13))!.standardError).toBe(Math.sqrt(2000))
  expect(book.numberOn(room.dateOf(15))).toMatchObject({ number: 180, standardError: Math.sqrt(2000) })
  // 48 and 52 have a standard deviation of the root of 8; 120 are left by the book in the larval tank.
  expect(book.numberOn(room.dateOf(23))).toMatchObject({
    ...{ number: 120 + 49, standardError: expect.closeTo(Math.hypot(Math.sqrt(2000), 2), 10) },
  })
  expect(counts(review)).toMatchObject([
    [0, 300, Math.sqrt(3000)],
    [5, 200, Math.sqrt(2000)],
    [14, 120 + 50, expect.closeTo(Math.hypot(Math.sqrt(2000), 2), 10)],
  ])
})

test('a night after a count adds the error of its own number', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 600)
  const batch = room.batch(8, [clutch], 130)
  room.count(8, batch, 'larvae', 120)
  const ofSecond = { hatchedOn: room.dateOf(8), batchId: batch.id, larvae: 300 }
  room.builder.fact('hatch', clutch.id, room.at(9, '08:00'), ofSecond)
  expect(only(room, 9).book.numberOn(room.dateOf(9))).toMatchObject({
    ...{ number: 420, standardError: expect.closeTo(Math.sqrt(1200 + 3000), 10) },
  })
})

test('days are those of the room, wherever it is', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 80)
  // At noon in Greenwich it is one o'clock of the next morning in New Zealand's summer.
  room.count(12, batch, 'larvae', 60)
  const countedOn = (timeZone: string) => reviewBroods({ ...room.review(20), timeZone })[0]!.book.countedOn
  expect(countedOn('UTC')).toEqual([8, 12].map(room.dateOf))
  expect(countedOn('Pacific/Auckland')).toEqual([8, 13].map(room.dateOf))
})
