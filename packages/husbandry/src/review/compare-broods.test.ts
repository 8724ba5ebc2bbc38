import { describe, expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { reviewBroods } from './brood-review.ts'
import { compareBroods } from './compare-broods.ts'

/** Clutches of two pairs; so many of each hundred larvae are left on day 10. */
function roomOf(left: { cold: number[]; warm: number[] }): BroodRoom {
  const room = new BroodRoom()
  const cultures = { cold: 'R1', warm: 'R2' }
  for (const name of ['cold', 'warm'] as const) {
    const pair = room.builder.pair({ name })
    left[name].forEach((number, index) => {
      const clutch = room.builder.clutch(pair, { spawnedAt: room.at(index * 12), eggs: 100 })
      const batch = room.batch(index * 12 + 8, [clutch], 100)
      room.eat(batch, 'rotifers', cultures[name], { from: index * 12 + 8, to: index * 12 + 12 })
      room.count(index * 12 + 18, batch, 'larvae', number)
    })
  }
  return room
}

describe('groups of broods', () => {
  const room = roomOf({ cold: [90, 85, 80, 88], warm: [20, 30, 25, 35] })
  const compared = compareBroods(reviewBroods(room.review(100)), 'culture')

  test('that differ by more than their clutches do are said to', () => {
    expect(compared).toMatchObject({ conclusion: 'differ', best: 'R1', worst: 'R2', leftOut: [] })
    // 57 of 400 and 290 of 400, half-way between the hatch and the count of day 10.
    expect(compared.groups).toMatchObject([
      { key: 'R1', clutches: 4, animals: 400, deaths: 57, curve: [{ ageDays: 5, atRisk: 400, share: 343 / 400 }] },
      { key: 'R2', clutches: 4, animals: 400, deaths: 290, curve: [{ ageDays: 5, share: 110 / 400 }] },
    ])
  })

  test('tell who is still at risk from the hatch to the last day on which any were watched', () => {
    expect(compared.days).toEqual([0, 2, 4, 6, 8, 10])
    expect(compared.groups.map(({ atRisk }) => atRisk)).toEqual([
      [400, 400, 400, 343, 343, 343],
      [400, 400, 400, 110, 110, 110],
    ])
  })

  test('leave out what tells nothing of deaths, or falls into two groups, and say so', () => {
    const more = roomOf({ cold: [90], warm: [] })
    const [a, b] = [more.clutch(0, 50), more.clutch(0, 60)]
    const shared = more.batch(8, [a, b], 100)
    more.eat(shared, 'rotifers', 'R1', { from: 8, to: 9 })
    more.eat(shared, 'rotifers', 'R3', { from: 10, to: 12 })
    more.count(14, shared, 'larvae', 80)
    more.batch(8, [more.clutch(0, 40)], 30)
    more.batch(8, [more.clutch(0, 40)])
    more.clutch(0, 40)
    const reviews = reviewBroods(more.review(30))
    expect(compareBroods(reviews, 'culture').leftOut).toEqual([
      { reason: 'not_counted', clutches: 2 },
      { reason: 'not_hatched', clutches: 1 },
      { reason: 'several', clutches: 2 },
    ])
    expect(compareBroods(reviews, 'pair').leftOut).toContainEqual({ reason: 'several', clutches: 2 })
    expect(compareBroods(reviews, 'tank').groups).toHaveLength(2)
  })

  test('of a species are its clutches', () => {
    const mixed = new BroodRoom()
    for (const [species, left] of [
      ['amphiprion-ocellaris', 60],
      ['amphiprion-ocellaris', 40],
      ['amphiprion-percula', 50],
    ] as const)
      mixed.count(18, mixed.batch(8, [mixed.clutch(0, 100, { species })], 100), 'larvae', left)
    expect(compareBroods(reviewBroods(mixed.review(30)), 'species').cares).toEqual(['nest'])
    expect(compareBroods(reviewBroods(mixed.review(30)), 'species').groups).toMatchObject([
      { key: 'amphiprion-ocellaris', clutches: 2 },
      { key: 'amphiprion-percula', clutches: 1 },
    ])
  })

  test('of a season are those that hatched in it', () => {
    expect(compareBroods(reviewBroods(room.review(100)), 'season').groups).toMatchObject([
      { key: 'mar_may', clutches: 8 },
    ])
  })

  test('of a tank are those that spent their first days in it, wherever they are now', () => {
    const housed = new BroodRoom()
    const [reef, nursery] = [housed.builder.tank().id, housed.builder.tank().id]
    const raisedIn = (tankId: string, movedOn: number) => {
      const batch = housed.batch(8, [housed.clutch(0, 60)], 50)
      housed.house(8, batch, tankId)
      housed.house(movedOn, batch)
      housed.count(20, batch, 'larvae', 30)
    }
    raisedIn(reef, 16)
    raisedIn(reef, 18)
    raisedIn(nursery, 17)
    raisedIn(nursery, 10)
    const { groups, leftOut } = compareBroods(reviewBroods(housed.review(30)), 'tank')
    expect(groups.map(({ key, clutches }) => [key, clutches])).toEqual([
      [reef, 2],
      [nursery, 1],
    ])
    expect(leftOut).toEqual([{ reason: 'several', clutches: 1 }])
  })

  test('that were fed the same at first stand together, and those that nobody wrote of do not stand', () => {
    const fed = new BroodRoom()
    const counted = (feed: (batch: { id: string }) => void) => {
      const batch = fed.batch(8, [fed.clutch(0, 60)], 50)
      feed(batch)
      fed.count(20, batch, 'larvae', 30)
    }
    counted((batch) => {
      fed.eat(batch, 'rotifers', 'R1', { from: 8, to: 14 })
      fed.eat(batch, 'concentrate', null, { from: 8, to: 14 })
    })
    counted((batch) => {
      fed.eat(batch, 'live_microalgae', 'P1', { from: 8, to: 14 })
      fed.eat(batch, 'rotifers', 'R2', { from: 8, to: 14 })
      // After the days that decide.
      fed.eat(batch, 'artemia', null, { from: 16, to: 20 })
    })
    counted((batch) => {
      fed.eat(batch, 'artemia', null, { from: 10, to: 14 })
      fed.eat(batch, 'rotifers', 'R1', { from: 8, to: 14 })
    })
    counted(() => undefined)
    const { groups, leftOut } = compareBroods(reviewBroods(fed.review(30)), 'protocol')
    expect(groups.map(({ key, clutches }) => [key, clutches])).toEqual([
      ['rotifers artemia', 1],
      ['rotifers green_water', 2],
    ])
    expect(leftOut).toEqual([{ reason: 'not_known', clutches: 1 }])
    const keysBy = (by: 'green_water' | 'artemia_day') => {
      const compared = compareBroods(reviewBroods(fed.review(30)), by)
      expect(compared.leftOut).toEqual(leftOut)
      return compared.groups.map(({ key, clutches }) => [key, clutches])
    }
    expect(keysBy('green_water')).toEqual([
      ['with', 2],
      ['without', 1],
    ])
    // Hatched on day 8, Artemia on day 10; of the others after the fifth day or never.
    expect(keysBy('artemia_day')).toEqual([
      ['2', 1],
      ['later', 2],
    ])
  })

  test('are none in a room where nothing was raised', () => {
    expect(compareBroods([], 'pair')).toMatchObject({
      groups: [],
      cares: [],
      conclusion: 'one_group',
      byAnimal: null,
      days: [0],
    })
  })

  test('of more than twelve the largest stand, and how many clutches the others have is said', () => {
    const many = new BroodRoom()
    const pairs = Array.from({ length: 14 }, () => many.builder.pair())
    const clutchOf = (pair: (typeof pairs)[number]) => {
      const batch = many.batch(8, [many.builder.clutch(pair, { spawnedAt: many.at(0), eggs: 60 })], 50)
      many.count(20, batch, 'larvae', 30)
    }
    for (const pair of pairs) clutchOf(pair)
    // The last two have a second clutch: of the others, which are alike, the first ten stand.
    for (const pair of pairs.slice(12)) clutchOf(pair)
    const { groups, leftOut } = compareBroods(reviewBroods(many.review(30)), 'pair')
    expect(groups.map(({ key, clutches }) => [key, clutches])).toEqual(
      [...pairs.slice(0, 10), ...pairs.slice(12)].map(({ id }, index) => [id, index < 10 ? 1 : 2]),
    )
    expect(leftOut).toEqual([{ reason: 'too_many_groups', clutches: 2 }])
  })

  test('are told on seven days or fewer, in whole steps', () => {
    const days = (lastDay: number) => {
      const one = new BroodRoom()
      one.count(8 + lastDay, one.batch(8, [one.clutch(0, 60)], 50), 'larvae', 50)
      return compareBroods(reviewBroods(one.review(4000)), 'pair').days
    }
    expect([days(6), days(7), days(12), days(13)]).toEqual([
      ...[
        [0, 1, 2, 3, 4, 5, 6],
        [0, 2, 4, 6],
        [0, 2, 4, 6, 8, 10, 12],
        [0, 5, 10],
      ],
    ])
    expect([30, 31, 60, 61, 120, 121, 300, 301].map((last) => days(last)[1])).toEqual([
      ...[5, 10, 10, 20, 20, 50, 50, 100],
    ])
    expect([600, 601, 1200, 1201, 3001].map((last) => days(last)[1])).toEqual([100, 200, 200, 500, 1000])
  })

  test('by season are those that hatched in December to February, and so on', () => {
    const seasonOf = (day: number) => {
      const year = new BroodRoom()
      year.count(day + 9, year.batch(day, [year.clutch(day - 8, 60)], 50), 'larvae', 30)
      return compareBroods(reviewBroods(year.review(400)), 'season').groups[0]!.key
    }
    // From 1 March on: 31 May, 1 June, 31 August, 1 September, 30 November, 1 December, 28 February.
    expect([91, 92, 183, 184, 274, 275, 364].map(seasonOf)).toEqual([
      ...['mar_may', 'jun_aug', 'jun_aug', 'sep_nov', 'sep_nov', 'dec_feb', 'dec_feb'],
    ])
  })

  test('of which all were seen dead are closed without a count, and those of an empty tank died half-way to its end', () => {
    const one = new BroodRoom()
    one.lose(10, one.batch(8, [one.clutch(0, 60)], 50), 50)
    const compared = (room: BroodRoom) => compareBroods(reviewBroods(room.review(30)), 'pair')
    expect(compared(one).groups).toMatchObject([{ animals: 50, deaths: 50, followedToDay: 2 }])
    const two = new BroodRoom()
    two.end(13, two.batch(8, [two.clutch(0, 60)], 50))
    // Half of the five days since the hatch, and days in whole ones.
    expect(compared(two)).toMatchObject({ days: [0, 1, 2, 3], groups: [{ deaths: 50, followedToDay: 2.5 }] })
  })

  test('of one clutch each prove nothing, however far apart they are', () => {
    const reviews = reviewBroods(roomOf({ cold: [90], warm: [20] }).review(100))
    // Dealt out in every way, two clutches always lie as far apart as they do.
    expect(compareBroods(reviews, 'culture')).toMatchObject({ conclusion: 'too_few_clutches', byClutch: { pValue: 1 } })
  })
})
