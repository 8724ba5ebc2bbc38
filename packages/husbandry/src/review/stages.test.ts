import { describe, expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { reviewBroods } from './brood-review.ts'
import type { ReviewRoom } from './review-room.ts'

const stagesOf = (room: ReviewRoom, clutchId?: string) => {
  const review = reviewBroods(room).find(({ brood }) => clutchId === undefined || brood.id === clutchId)!
  return Object.fromEntries(review.stages.map((stage) => [stage.stage, stage]))
}
const statuses = (room: ReviewRoom) =>
  Object.values(stagesOf(room)).map(({ stage, status, atLeast, atMost }) => [stage, status, atLeast, atMost])

describe('stages that nobody dated, of a tank that is empty', () => {
  test('were reached by none that died; whether any was fed nobody can say', () => {
    const room = new BroodRoom()
    room.end(20, room.batch(8, [room.clutch(0, 60)], 50))
    expect(statuses(room.review(30)).slice(2)).toEqual([
      ['first_feed', 'unknown', null, null],
      // None was seen after the hatch, and none is left.
      ['day_5', 'reached', 0, 50],
      ['metamorphosis', 'reached', 0, 0],
      ['settled', 'reached', 0, 0],
      ['placed', 'reached', 0, 0],
    ])
  })

  test('are followed no further where young left it alive', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)], 50)
    room.leave(10, batch, 'culled', 50)
    expect(statuses(room.review(30)).slice(2)).toEqual([
      ['first_feed', 'not_followed', null, null],
      ['day_5', 'not_followed', null, null],
      ['metamorphosis', 'not_followed', null, null],
      ['settled', 'not_followed', null, null],
      ['placed', 'reached', 0, 0],
    ])
  })
})

test('a stage that came after the last had died was reached by none', () => {
  const room = new BroodRoom()
  room.lose(10, room.batch(8, [room.clutch(0, 60)], 50), 50)
  expect(stagesOf(room.review(30)).day_5).toMatchObject({ status: 'reached', atLeast: 0, atMost: 0 })
})

describe('young that leave alive are not dead', () => {
  test('when they left on the first morning', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 90)], 80)
    room.leave(8, batch, 'culled', 10)
    room.count(13, batch, 'larvae', 60)
    const { hatched, day_5 } = stagesOf(room.review(14))
    // Half of the 10 count as at risk: 10 of 75.
    expect(hatched).toMatchObject({ fromStage: 'laid', lost: 10 })
    expect(day_5).toMatchObject({ fromStage: 'hatched', lost: 10, share: { share: 1 - 10 / 75, of: 75 } })
  })

  test('nor when nobody said how many had hatched', () => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 90)
    const batch = room.batch(8, [clutch])
    const left = { hatchedOn: room.dateOf(8), larvae: 5 }
    room.builder.fact('hatch', clutch.id, room.at(9), left)
    room.leave(10, batch, 'culled', 20)
    room.count(13, batch, 'larvae', 50)
    room.leave(14, batch, 'culled', 7)
    // 20 culled by then and 5 left with their parents: 15 of 77.5.
    expect(stagesOf(room.review(14)).day_5).toMatchObject({ fromStage: 'laid', lost: 15, share: { of: 77.5 } })
  })

  test('when those that never settled are culled after the others have moved', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 90)], 80)
    room.count(13, batch, 'larvae', 60)
    const group = room.group(24, batch)
    room.move(24, batch, group, 30)
    // Three of the first are given away before the last have moved.
    room.leave(25, group, 'culled', 3)
    room.move(26, batch, group, 20)
    room.leave(30, batch, 'culled', 5)
    room.end(30, batch)
    room.leave(90, group, 'placed', 45)
    room.end(90, group)
    const { settled, placed } = stagesOf(room.review(100))
    // 60 less 5 culled are 55, and 50 moved; of 50 less 3 are 47, and 45 were placed.
    expect(settled).toMatchObject({
      ...{ on: room.dateOf(26), fromStage: 'day_5', atLeast: 50, lost: 5, isAboveBook: false },
    })
    expect(placed).toMatchObject({ fromStage: 'settled', atLeast: 45, lost: 2, isAboveBook: false })
  })

  test('when some are placed straight out of the larval tank', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 90)], 80)
    room.count(13, batch, 'larvae', 60)
    room.leave(22, batch, 'placed', 6)
    room.leave(22, batch, 'kept', 4)
    const group = room.group(24, batch)
    room.move(24, batch, group, 50)
    room.end(24, batch)
    room.leave(90, group, 'placed', 45)
    room.end(90, group)
    const { settled, placed } = stagesOf(room.review(100))
    expect(settled).toMatchObject({ atLeast: 50, lost: 0, isAboveBook: false })
    // All 55 were placed, 45 of the 50 that settled.
    expect(placed).toMatchObject({ atLeast: 55, fromStage: 'settled', lost: 5, share: { share: 45 / 50, of: 50 } })
  })

  test('when they settle among others', () => {
    const room = new BroodRoom()
    const [a, b] = [room.clutch(0, 100), room.clutch(0, 80)]
    const [first, second] = [room.batch(8, [a], 90), room.batch(8, [b], 70)]
    const group = room.group(30, first)
    room.count(13, second, 'larvae', 50)
    room.move(30, first, group, 55)
    room.move(40, second, group, 40)
    room.end(40, second)
    expect(stagesOf(room.review(100), b.id).settled).toMatchObject({
      ...{ fromStage: 'day_5', atLeast: 40, lost: 10, isAboveBook: false },
    })
  })
})

test('who left after the last was placed left all the same', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 80)
  room.count(13, batch, 'larvae', 60)
  const group = room.group(24, batch)
  room.leave(24, batch, 'placed', 4)
  room.move(24, batch, group, 30)
  room.leave(60, group, 'placed', 10)
  room.leave(70, group, 'culled', 5)
  // Of 60 there are 26 in the larval tank and 15 in grow-out; 14 were placed and 5 culled.
  expect(stagesOf(room.review(80)).placed).toMatchObject({ fromStage: 'day_5', lost: 0, isAboveBook: false })
})

describe('numbers that contradict each other', () => {
  test('with those who left, leave the earlier one short by as many', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 90)], 80)
    room.count(13, batch, 'larvae', 60)
    room.leave(15, batch, 'culled', 30)
    room.seeSettled(20, batch)
    room.count(20, batch, 'larvae', 40)
    // 30 culled and 40 there were 70, and 60 had been counted.
    expect(stagesOf(room.review(30)).metamorphosis).toMatchObject({
      ...{ fromStage: 'day_5', lost: 0, isAboveBook: true, share: { share: 1, of: 55 } },
    })
  })

  test('are off by as much as they were counted, where that is more than they differ by', () => {
    const room = new BroodRoom()
    room.batch(8, [room.clutch(0, 300)], 310)
    const { share } = stagesOf(room.review(9)).hatched!
    // Wilson 1927 for 310 of 310 and both counts' errors, each the root of ten times its number, on the log scale.
    const z = 1.959963984540054
    const wilson = 310 / (310 + z * z)
    const counting = z * Math.hypot(Math.sqrt(3000) / 300, Math.sqrt(3100) / 310)
    expect(share!.lower).toBeCloseTo(Math.exp(-Math.hypot(Math.log(wilson), counting)), 10)
  })
})

describe('whoever hatched later was not there yet', () => {
  const fedOnDay1 = (larvae: number | undefined) => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 120)
    const batch = room.batch(8, [clutch, room.clutch(1, 50)], 60)
    room.eat(batch, 'rotifers', 'R1', { from: 9, to: 14 })
    const ofThird = { hatchedOn: room.dateOf(9), batchId: batch.id }
    room.builder.fact('hatch', clutch.id, room.at(10), { ...ofThird, ...(larvae === undefined ? {} : { larvae }) })
    room.lose(11, batch, 4)
    room.count(13, batch, 'larvae', 80)
    const { first_feed } = stagesOf(room.review(20))
    return [first_feed!.atLeast, first_feed!.atMost]
  }

  test('when the first were fed', () => {
    // Of 84 that were seen 30 had come since; of how many nobody said, they may all have.
    expect([fedOnDay1(30), fedOnDay1(undefined)]).toEqual([
      [54, 60],
      [0, 60],
    ])
  })

  test('and who was counted before that was there, whoever came since', () => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 90)
    const batch = room.batch(8, [clutch])
    room.eat(batch, 'rotifers', 'R1', { from: 8, to: 14 })
    room.count(9, batch, 'larvae', 40)
    room.builder.fact('hatch', clutch.id, room.at(10), { hatchedOn: room.dateOf(9), batchId: batch.id })
    expect(stagesOf(room.review(20)).first_feed).toMatchObject({ atLeast: 40, atMost: null })
  })
})

test('larvae that are fed on the evening of their hatch are those of the morning after', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 80)
  room.eat(batch, 'rotifers', 'R1', { from: 7, to: 14 })
  for (const today of [7, 8, 9])
    expect(stagesOf(room.review(today)).first_feed).toMatchObject({
      ...{ on: room.dateOf(7), ageDays: null, atLeast: 80, atMost: 80, fromStage: null },
    })
})

describe('what only a part was told of', () => {
  test('stays unknown: eggs of two clutches, larvae of two nights in one tank', () => {
    const room = new BroodRoom()
    const [told, untold] = [room.clutch(0, 100), room.clutch(0)]
    const batch = room.batch(8, [told, untold], 60)
    const ofSecond = { hatchedOn: room.dateOf(8), batchId: batch.id }
    room.builder.fact('hatch', told.id, room.at(9), ofSecond)
    expect(statuses(room.review(9)).slice(0, 2)).toEqual([
      ['laid', 'reached', null, null],
      ['hatched', 'reached', null, null],
    ])
  })

  test('leaves open how many will settle', () => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)])
    room.move(20, batch, room.group(20, batch), 20)
    expect(stagesOf(room.review(21)).settled).toMatchObject({ status: 'so_far', atLeast: 20, atMost: null })
  })

  test('and how many will be placed of those that others came to', () => {
    const room = new BroodRoom()
    const [batch, others] = [room.batch(8, [room.clutch(0, 60)], 50), room.batch(8, [room.clutch(1, 60)], 40)]
    const group = room.group(20, batch)
    room.move(20, batch, group, 50)
    room.end(20, batch)
    room.leave(60, group, 'placed', 10)
    room.move(61, others, group, 5)
    expect(stagesOf(room.review(70)).placed).toMatchObject({ status: 'so_far', atLeast: 10, atMost: 10 })
  })

  test('of eggs that went to somebody else nothing more is asked', () => {
    const room = new BroodRoom()
    const clutch = room.clutch(0, 100)
    room.move(3, clutch, room.builder.tank(), 100)
    const [laid, ...later] = Object.values(stagesOf(room.review(30)))
    expect(laid).toMatchObject({ status: 'reached', atLeast: 100 })
    expect(new Set(later.map(({ status }) => status))).toEqual(new Set(['not_followed']))
  })
})

test('a stage is reached on its very day, the first food being the first with animals in it', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 80)
  room.eat(batch, 'concentrate', null, { from: 8, to: 20 })
  room.eat(batch, 'frozen', null, { from: 10, to: 20 })
  room.builder.fact('observation', batch.id, room.at(12), { signs: ['swimming_slow'] })
  for (const day of [21, 20]) room.seeSettled(day, batch)
  const stages = stagesOf(room.review(13))
  expect(stages).toMatchObject({ first_feed: { on: room.dateOf(10) }, day_5: { on: room.dateOf(13) } })
  expect(stagesOf(room.review(12)).day_5).toMatchObject({ on: null, status: 'not_yet' })
  expect(stagesOf(room.review(30)).metamorphosis!.on).toBe(room.dateOf(20))
})

test('of young that move to grow-out so many at least will settle as have moved, and at most those with whoever is left', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 60)], 50)
  room.count(19, batch, 'larvae', 40)
  room.move(20, batch, room.group(20, batch), 15)
  expect(stagesOf(room.review(21)).settled).toMatchObject({ status: 'so_far', atLeast: 15, atMost: 40 })
  const untold = new BroodRoom()
  const other = untold.batch(8, [untold.clutch(0, 60)])
  untold.move(20, other, untold.group(20, other), 15)
  expect(stagesOf(untold.review(21)).settled).toMatchObject({ status: 'so_far', atLeast: 15, atMost: null })
})

describe('where nobody said how many hatched', () => {
  const fedOnDay9 = (later: (room: BroodRoom, batch: { id: string }) => void) => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0, 60)])
    room.eat(batch, 'rotifers', null, { from: 9, to: 12 })
    later(room, batch)
    return stagesOf(room.review(30)).first_feed
  }

  test('a stage is unknown until somebody saw one of them', () => {
    expect(fedOnDay9(() => {})).toMatchObject({ status: 'unknown', atLeast: null, atMost: null })
    expect(fedOnDay9((room, batch) => room.lose(12, batch, 1))).toMatchObject({
      ...{ status: 'reached', atLeast: 1, atMost: null },
    })
  })

  test('those seen later were there, but for whoever hatched by then', () => {
    const second = (room: BroodRoom, batch: { id: string }, day: number, larvae: number) =>
      room.builder.fact('hatch', room.builder.snapshot.clutches[0]!.id, room.at(day, '08:00'), {
        ...{ hatchedOn: room.dateOf(day - 1), batchId: batch.id, larvae },
      })
    // 60 counted on the very morning of the second night's 40, and what hatched after that count is none of them.
    expect(
      fedOnDay9((room, batch) => {
        second(room, batch, 12, 40)
        room.count(12, batch, 'larvae', 60)
        second(room, batch, 13, 30)
      }),
    ).toMatchObject({ atLeast: 20 })
    // Nobody counted: 50 died, of whom 40 may be those of the second night.
    expect(
      fedOnDay9((room, batch) => {
        second(room, batch, 12, 40)
        room.lose(14, batch, 50)
      }),
    ).toMatchObject({ atLeast: 10 })
  })
})

test('larvae that came before the eggs were counted count by what was first written of the eggs', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0)
  room.count(1, clutch, 'larvae', 12)
  room.count(2, clutch, 'eggs', 40)
  expect(stagesOf(room.review(3)).laid).toMatchObject({ atLeast: 40, atMost: 40 })
})
