import { wilsonInterval } from '@fryward/survival'
import { describe, expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { type BroodReview, reviewBroods, reviewOfClutch, tanksThroughLife } from './brood-review.ts'

const only = (room: BroodRoom, today: number): BroodReview => {
  const reviews = reviewBroods(room.review(today))
  expect(reviews).toHaveLength(1)
  return reviews[0]!
}
/** "laid 300, first_feed 200-240, placed not_yet": what is known of each stage. */
const told = ({ stages }: BroodReview) =>
  Object.fromEntries(
    stages.map(({ stage, status, atLeast, atMost }) => {
      const number = atLeast === atMost ? String(atLeast ?? '?') : `${atLeast ?? '?'}-${atMost ?? '?'}`
      return [stage, status === 'reached' ? number : number === '?' ? status : `${status} ${number}`]
    }),
  )
const stageOf = (review: BroodReview, name: string) => review.stages.find(({ stage }) => stage === name)!

describe('one clutch from its eggs to its placed young', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 90)
  const batch = room.batch(8, [clutch], 80)
  room.eat(batch, 'rotifers', 'R1', { from: 8, to: 16 })
  room.lose(9, batch, 10, 'thin')
  room.lose(11, batch, 5, 'Thin')
  room.count(13, batch, 'larvae', 60)
  room.lose(15, batch, 2)
  room.seeSettled(20, batch)
  const group = room.group(24, batch)
  room.move(24, batch, group, 50)
  room.end(24, batch)
  room.lose(40, group, 1, 'jumped')
  room.leave(80, group, 'culled', 3)
  room.leave(90, group, 'placed', 40)
  room.leave(90, group, 'kept', 2)
  const review = only(room, 100)

  test('has a number for each stage that somebody counted, and two ends for the others', () => {
    expect(told(review)).toEqual({
      laid: '90',
      hatched: '80',
      first_feed: '80',
      day_5: '60',
      // After the count of 60 two were seen dead on day 7, and 50 were moved on day 16.
      metamorphosis: '50-58',
      settled: '50',
      placed: 'so_far 42',
    })
    expect(review.numberNow).toBe(4)
  })

  test('gives shares of the known stage before, with the number that they are of', () => {
    expect(stageOf(review, 'hatched').share).toMatchObject({
      share: 80 / 90,
      of: 90,
      ...wilsonInterval({ successes: 80, trials: 90 }),
    })
    expect(stageOf(review, 'metamorphosis')).toMatchObject({ share: null, fromStage: null })
    expect(stageOf(review, 'settled')).toMatchObject({ fromStage: 'day_5', lost: 10 })
    expect(stageOf(review, 'settled').share?.share).toBeCloseTo(50 / 60, 12)
    // One died of 50; 3 culled and 4 still there were at risk for half of the way.
    expect(stageOf(review, 'placed').share).toMatchObject({ share: 1 - 1 / 46.5, of: 46.5 })
    expect(stageOf(review, 'placed').lost).toBe(1)
  })

  test('tells the dead by cause, whatever its letters, and the missing apart', () => {
    expect(review.losses).toEqual([
      { cause: 'thin', number: 15 },
      { cause: null, number: 2 },
      { cause: 'jumped', number: 1 },
    ])
    // 80 less 15 seen dead is 65, and 60 were counted; 58 by the book, and 50 moved before the tank was ended.
    expect(review.missing).toBe(5 + 8)
  })

  test('was on day 0 on the morning after the hatch night', () => {
    expect(review.book.bornOn).toBe('2026-03-09')
    expect(stageOf(review, 'hatched')).toMatchObject({ on: '2026-03-09', ageDays: 0 })
    expect(stageOf(review, 'day_5')).toMatchObject({ on: '2026-03-14', ageDays: 5 })
    // Eggs have no age of larvae.
    expect(stageOf(review, 'laid').ageDays).toBeNull()
    expect(review.cultureIds).toEqual(['R1'])
  })
})

describe('what nobody wrote down', () => {
  test('stays unknown: eggs, larvae and a first count late', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0)])
    room.count(16, batch, 'larvae', 70)
    const review = only(room, 20)
    expect(told(review)).toEqual({
      laid: '?',
      hatched: '?',
      first_feed: 'not_yet',
      day_5: '70-?',
      metamorphosis: 'not_yet',
      settled: 'not_yet',
      placed: 'not_yet',
    })
    expect(review.stages.every(({ share }) => share === null)).toBe(true)
    expect(review.ledger).toEqual([{ day: 8, kind: 'count', animals: 70, standardError: 0 }])
  })

  test('is not made up from what the book says: without a later count as many as are left may have died', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 100)], 90)
    room.lose(10, batch, 10)
    expect(told(only(room, 20)).day_5).toBe('0-80')
  })

  test('of an old clutch nobody will say any more', () => {
    const room = new BroodRoom()
    room.clutch(0, 100)
    expect(told(only(room, 30)).hatched).toBe('not_yet')
    expect(told(only(room, 70)).hatched).toBe('unknown')
  })
})

describe('counting', () => {
  test('of many larvae in a tenth of the surface may be off, and says by how much', () => {
    const room = new BroodRoom()
    room.batch(8, [room.clutch(0, 400)], 300)
    const { interval } = stageOf(only(room, 9), 'hatched')
    // Garwood's interval of 30 is 20.24 to 42.83.
    expect(interval).toEqual({ lower: 202, upper: 428 })
  })

  test('twice says by how far the two lie apart', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 400)], 300)
    room.count(13, batch, 'larvae', 190, 210)
    expect(stageOf(only(room, 14), 'day_5').interval).toEqual({ lower: 180, upper: 220 })
  })

  test('more than there can have been is said to be so, with no death less than none', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 90)], 60)
    room.count(13, batch, 'larvae', 75)
    const day5 = stageOf(only(room, 14), 'day_5')
    expect(day5).toMatchObject({ atLeast: 75, isAboveBook: true, lost: 0, share: { share: 1 } })
  })
})

describe('a batch that is split and merged again', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const first = room.batch(8, [clutch], 90)
  const second = room.batch(8, [], undefined)
  room.builder.snapshot.facts = room.builder.snapshot.facts.filter(({ subjectId }) => subjectId !== second.id)
  room.move(10, first, second, 40)
  room.count(13, first, 'larvae', 45)
  room.count(13, second, 'larvae', 38)
  room.move(15, second, first, 38)

  test('stays one brood, whose moves are neither deaths nor arrivals', () => {
    const review = only(room, 16)
    expect(told(review)).toMatchObject({ hatched: '90', day_5: '83' })
    expect(review.ledger?.filter(({ kind }) => kind !== 'count')).toEqual([])
    expect([review.numberNow, review.missing, review.mixedOn]).toEqual([83, 7, null])
  })
})

describe('two clutches in one tank', () => {
  const room = new BroodRoom()
  const [a, b] = [room.clutch(0, 100), room.clutch(1, 80)]
  const batch = room.batch(8, [a, b], 150)
  room.count(13, batch, 'larvae', 100)

  test('are one row, for nobody can tell their larvae apart', () => {
    const review = only(room, 14)
    expect(review.brood.clutches.map(({ id }) => id)).toEqual([a.id, b.id])
    expect(told(review)).toMatchObject({ laid: '180', hatched: '150', day_5: '100' })
  })
})

describe('young that are put together with others later', () => {
  const room = new BroodRoom()
  const [a, b] = [room.clutch(0, 100), room.clutch(1, 80)]
  const [batchA, batchB] = [room.batch(8, [a], 90), room.batch(9, [b], 70)]
  const group = room.group(30, batchA)
  room.count(14, batchA, 'larvae', 60)
  room.count(14, batchB, 'larvae', 50)
  room.move(30, batchA, group, 55)
  room.end(30, batchA)
  room.lose(35, group, 5)
  room.move(40, batchB, group, 40)
  room.end(40, batchB)
  room.leave(90, group, 'placed', 80)
  const [first, second] = reviewBroods(room.review(100))

  test('are followed until then, and neither dead nor placed after', () => {
    expect(told(first!)).toMatchObject({ settled: '55', placed: 'not_followed' })
    expect(told(second!)).toMatchObject({ settled: '40', placed: 'not_followed' })
    expect([first!.mixedOn, second!.mixedOn]).toEqual(['2026-04-10', null])
    expect(first!.ledger?.filter(({ kind }) => kind === 'movedOut')).toEqual([
      { day: 32, kind: 'movedOut', animals: 50 },
    ])
    expect(second!.ledger?.filter(({ kind }) => kind === 'movedOut')).toEqual([
      { day: 31, kind: 'movedOut', animals: 40 },
    ])
  })

  test('and those who had settled before were not taken from among the larvae', () => {
    expect(stageOf(first!, 'settled')).toMatchObject({ fromStage: 'hatched', lost: 90 - 55 })
  })

  test('nor were larvae lost that others came to before they settled', () => {
    const larvae = new BroodRoom()
    const [own, others] = [larvae.batch(8, [larvae.clutch(0, 100)], 90), larvae.batch(9, [larvae.clutch(1, 80)], 70)]
    larvae.move(11, own, larvae.group(11, own), 20)
    larvae.move(12, others, own, 5)
    const [mixed] = reviewBroods(larvae.review(20))
    // 20 moved on, and the 70 left are followed no further.
    expect(stageOf(mixed!, 'settled')).toMatchObject({ atLeast: 20, fromStage: 'hatched', lost: 0 })
  })

  test('were lost to no cause but their own', () => {
    expect(first!.losses).toEqual([{ cause: null, number: 5 }])
    expect(second!.losses).toEqual([])
  })
})

test('young that hatch in among bought-in larvae are followed no further: none of them is said to have died', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 90)
  const others = room.builder.batch({ hatchedOn: room.dateOf(5), larvae: 50 })
  room.builder.fact('hatch', clutch.id, room.at(8), { hatchedOn: room.dateOf(7), larvae: 60, batchId: others.id })
  expect(told(only(room, 20))).toMatchObject({ hatched: '60', day_5: 'not_followed', settled: 'not_followed' })
})

describe('young that are not raised', () => {
  test('are left with their parents and followed no further', () => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 100)
    room.builder.fact('hatch', clutch.id, room.at(8), { hatchedOn: room.dateOf(7), larvae: 95 })
    expect(told(only(room, 30))).toEqual({
      laid: '100',
      hatched: '95',
      first_feed: 'not_followed',
      day_5: 'not_followed',
      metamorphosis: 'not_followed',
      settled: 'not_followed',
      placed: 'not_followed',
    })
  })

  test('or were eaten as eggs', () => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 90)
    room.builder.fact('loss', clutch.id, room.at(2), { number: 90, of: 'eggs', cause: 'eaten by the parents' })
    const review = only(room, 30)
    expect(told(review)).toMatchObject({ laid: '90', hatched: '0', settled: '0', placed: '0' })
    expect(review.losses).toEqual([{ cause: 'eaten by the parents', number: 90 }])
    expect(stageOf(review, 'hatched')).toMatchObject({ lost: 90, share: { share: 0, of: 90 } })
  })

  test('a clutch that was recorded by mistake is no row', () => {
    const room = new BroodRoom()
    room.clutch(0, 90)
    room.builder.snapshot.facts.length = 0
    expect(reviewBroods(room.review(5))).toEqual([])
  })
})

test('the young of a mouthbrooder are born settled: no metamorphosis is asked for', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 45, { species: 'pterapogon-kauderni', care: 'mouth' })
  const batch = room.batch(20, [clutch], 40)
  room.eat(batch, 'artemia', null, { from: 20, to: 40 })
  const group = room.group(40, batch)
  room.move(40, batch, group, 36)
  room.end(40, batch)
  const review = only(room, 60)
  expect(review.stages.map(({ stage }) => stage)).not.toContain('metamorphosis')
  expect(told(review)).toMatchObject({ first_feed: '40', settled: '36', placed: 'not_yet' })
})

test('a second night adds its larvae to those of the first', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const batch = room.batch(8, [clutch], 60)
  room.builder.fact('hatch', clutch.id, room.at(9, '08:00'), {
    hatchedOn: room.dateOf(8),
    batchId: batch.id,
    larvae: 30,
  })
  room.count(13, batch, 'larvae', 80)
  const review = only(room, 14)
  expect(told(review)).toMatchObject({ hatched: '90', day_5: '80' })
  expect(review.ledger).toContainEqual({ day: 1, kind: 'movedIn', animals: 30 })
  expect(review.missing).toBe(10)
})

test('a count between two nights does not lose the second', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const batch = room.batch(8, [clutch], 60)
  room.count(8, batch, 'larvae', 55)
  room.builder.fact('hatch', clutch.id, room.at(9, '08:00'), {
    hatchedOn: room.dateOf(8),
    batchId: batch.id,
    larvae: 30,
  })
  expect(only(room, 10).numberNow).toBe(85)
  // On the first morning the count is the number that all is reckoned from.
  expect(only(room, 8).ledger?.[0]).toEqual({ day: 0, kind: 'count', animals: 55, standardError: 0 })
})

test('a count of one of two tanks on the first morning is of that one, and the other is as it was', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 100)
  const [first] = [room.batch(8, [clutch], 60), room.batch(8, [clutch], 30)]
  room.count(8, first!, 'larvae', 55)
  expect(only(room, 8).ledger).toEqual([{ day: 0, kind: 'count', animals: 85, standardError: 0 }])
})

test('more that left than were counted were there: the count was off, and nothing breaks', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 50)
  const group = room.group(20, batch)
  room.move(20, batch, group, 60)
  room.end(20, batch)
  const review = only(room, 30)
  expect(told(review)).toMatchObject({ hatched: '50', settled: '60' })
  expect(stageOf(review, 'day_5')).toMatchObject({ atLeast: 60, isAboveBook: true, lost: 0 })
  expect(review.missing).toBe(0)
})

describe('what was written down late or twice', () => {
  test('eggs are those counted by the day after they were laid, else as first written, else as ever counted', () => {
    const laid = (eggs: number | undefined, countedOn: number) => {
      const room = new BroodRoom()
      const clutch = room.clutch(0, eggs)
      room.count(countedOn, clutch, 'eggs', 80)
      room.count(6, clutch, 'eggs', 50)
      return told(only(room, 7)).laid
    }
    expect([laid(90, 0), laid(90, 1), laid(90, 2), laid(undefined, 4)]).toEqual(['80', '80', '90', '80'])
  })

  test('a clutch of which nobody said anything for sixty days is not looked for any more', () => {
    const room = new BroodRoom()
    room.clutch(0, 100)
    expect([60, 61].map((today) => told(only(room, today)).hatched)).toEqual(['not_yet', 'unknown'])
  })

  test('food and tanks decide until the fifth day of life, and the last of it is one', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 100)], 90)
    room.house(8, batch, 'nursery')
    room.eat(batch, 'rotifers', 'R1', { from: 13, to: 14 })
    room.eat(batch, 'rotifers', 'R2', { from: 14, to: 14 })
    room.eat(batch, 'dry', null, { from: 14, to: 14 })
    room.house(13, batch, 'second')
    room.house(14, batch, 'third')
    const { cultureIds, tankIds, protocol, artemiaDay } = only(room, 20)
    expect({ cultureIds, tankIds, protocol, artemiaDay }).toEqual({
      ...{ cultureIds: ['R1'], tankIds: ['nursery', 'second'], protocol: ['rotifers'], artemiaDay: null },
    })
  })

  test('the eggs were in the tank that their pair was in on the day on which they were laid', () => {
    const room = new BroodRoom()
    const pair = { id: room.clutch(3, 100).pairId }
    room.house(0, pair, 'reef')
    room.house(2, pair, 'breeding')
    room.house(4, pair, 'hospital')
    expect(only(room, 10).eggTankId).toBe('breeding')
  })

  test('cultures are those of its animals, rotifers and copepods alike, and not those that greened the water', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 100)], 90)
    for (const [food, culture] of [
      ['live_microalgae', 'P1'],
      ['copepods', 'C1'],
      ['rotifers', 'R1'],
    ] as const)
      room.eat(batch, food, culture, { from: 8, to: 12 })
    expect(only(room, 20).cultureIds).toEqual(['C1', 'R1'])
  })

  test('the tanks of a whole life are those until today, and none of larvae that were left with their parents', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 100)], 90)
    for (const [day, tank] of [
      [8, 'nursery'],
      [16, 'second'],
      [20, 'third'],
      [21, 'next week'],
    ] as const)
      room.house(day, batch, tank)
    const unraised = room.clutch(1, 100)
    room.builder.fact('hatch', unraised.id, room.at(9), { hatchedOn: room.dateOf(8), larvae: 95 })
    const past = room.review(20)
    const reviews = reviewBroods(past)
    expect(reviews.map((review) => tanksThroughLife(past, review))).toEqual([['nursery', 'second', 'third'], []])
  })

  test('causes of as many deaths stand by their names, and one without a name first', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 100)], 90)
    for (const cause of ['white', undefined, 'thin', ' Thin '])
      room.lose(9, batch, cause?.trim() === 'Thin' ? 1 : 4, cause)
    room.lose(9, batch, 1, 'white')
    room.lose(9, batch, 1)
    expect(only(room, 20).losses.map(({ cause, number }) => [cause, number])).toEqual([
      [null, 5],
      ['thin', 5],
      ['white', 5],
    ])
  })
})

test('any clutch of a brood leads to its review, and one that nobody laid to none', () => {
  const room = new BroodRoom()
  const [a, b, c] = [room.clutch(0, 100), room.clutch(1, 80), room.clutch(2, 60)]
  room.batch(9, [a, b], 150)
  const review = room.review(20)
  const broods = [a, b, c].map(({ id }) => reviewOfClutch(review, id)?.brood.clutches.map((clutch) => clutch.id))
  expect(broods).toEqual([[a.id, b.id], [a.id, b.id], [c.id]])
  expect(reviewOfClutch(review, room.builder.nextId())).toBeNull()
})
