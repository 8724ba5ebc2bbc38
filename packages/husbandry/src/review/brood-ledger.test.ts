import { describe, expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { reviewBroods } from './brood-review.ts'

/** Day, kind, number and, of counts, error of every entry. */
const ledger = (room: BroodRoom, today = 30) =>
  reviewBroods(room.review(today))[0]!.ledger?.map(({ day, kind, animals, standardError }) => [
    ...[day, kind, animals],
    ...(standardError === undefined ? [] : [standardError]),
  ])

describe('the ledger of a brood', () => {
  test('begins with the larvae of its morning, before any of them died', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)], 50)
    room.lose(8, batch, 6)
    expect(ledger(room)).toEqual([
      [0, 'count', 50, 0],
      [0, 'loss', 6],
    ])
  })

  test('begins with what was counted that day where they were counted again, when the dead of it had gone', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)], 50)
    room.lose(8, batch, 6)
    room.count(8, batch, 'larvae', 41)
    expect(ledger(room)).toEqual([[0, 'count', 41, 0]])
    room.count(12, batch, 'larvae', 30)
    expect(ledger(room)).toEqual([
      [0, 'count', 41, 0],
      [4, 'count', 30, 0],
    ])
  })

  test('begins with a later count where nobody said how many had hatched, and leaves out what was before it', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)])
    room.lose(9, batch, 6)
    room.count(11, batch, 'larvae', 40)
    room.lose(12, batch, 5)
    expect(ledger(room)).toEqual([
      [3, 'count', 40, 0],
      [4, 'loss', 5],
    ])
  })

  test('has those who came on a day before those who died on it', () => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 100)
    const batch = room.batch(8, [clutch], 10)
    room.lose(9, batch, 25)
    room.builder.fact('hatch', clutch.id, room.at(9, '08:00'), {
      ...{ hatchedOn: room.dateOf(8), batchId: batch.id, larvae: 30 },
    })
    // 10 and 30 are enough for 25.
    expect(ledger(room)).toEqual([
      [0, 'count', 10, 0],
      [1, 'movedIn', 30],
      [1, 'loss', 25],
    ])
  })

  test('says of a count that fewer were said than left until the next one that it was off by as many', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)], 20)
    room.lose(10, batch, 26)
    room.count(12, batch, 'larvae', 15)
    // What left after the next count is no fault of the first.
    room.lose(14, batch, 18)
    expect(ledger(room)).toEqual([
      [0, 'count', 20, 6],
      [2, 'loss', 26],
      [4, 'count', 15, 3],
      [6, 'loss', 18],
    ])
  })

  test('takes what is told of the day of a later count as gone before it', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)], 40)
    room.lose(12, batch, 30)
    room.count(12, batch, 'larvae', 10)
    expect(ledger(room)).toEqual([
      [0, 'count', 40, 0],
      [4, 'count', 10, 0],
      [4, 'loss', 30],
    ])
  })
})
