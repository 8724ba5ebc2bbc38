import type { FoodChange } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { addDays } from '../calendar/husbandry-day.ts'
import type { CultureAhead } from './culture-ahead.ts'
import { changedSupplies } from './supply-changes.ts'

const today = '2026-03-10'
const days = 10
const horizon = { today, days, futures: 2 }

/** 20 L at rest with 200 per mL: n becomes 2 n / (1 + n / 4e6). In its second future half as many, and all dead on day 3. */
function culture(id: string, given: Partial<CultureAhead> = {}): CultureAhead {
  const day = { gain: 2, crowding: 1 / 4e6 }
  const growth = new Array(days).fill(day)
  const dying = growth.map((each, index) => (index < 3 ? each : { gain: 0, crowding: 0 }))
  return {
    ...{ id, name: id, culture: null, standing: 'gives', volumeL: 20, animals: 4e6, growth },
    ...{
      floorAnimals: 1e6,
      mostShare: 0.3,
      goneShare: 0.25,
      thinnedToAnimals: null,
      firstDay: 0,
      sharesCausesWith: [],
    },
    futures: [
      { animals: 4e6, growth },
      { animals: 2e6, growth: dying },
    ],
    ...given,
  }
}

const first = { firstHarvestAgeDays: 3, firstHarvestPerMl: 150 }
const changed = (ahead: CultureAhead[], change: FoodChange | FoodChange[], about = first) =>
  changedSupplies(ahead, { changes: [change].flat(), horizon, first: about })
const gains = (growth: CultureAhead['growth']) => growth.map(({ gain }) => gain)

describe('what a culture gives', () => {
  const two = [culture('R1'), culture('R2', { thinnedToAnimals: 3e6 })]

  test('is nothing from tomorrow on where it crashes, and of others what it was', () => {
    const [R1, R2] = changed(two, { kind: 'culture_crashes', cultureId: 'R1' })
    for (const { growth } of [R1!, ...R1!.futures])
      expect(growth).toEqual(new Array(days).fill({ gain: 0, crowding: 0 }))
    expect([R1!.animals, R2]).toEqual([4e6, two[1]])
  })

  test('is not thinned where the room thins less, and grows half as fast while somebody is away', () => {
    expect(changed(two, { kind: 'thin_less' })).toEqual(two.map((each) => ({ ...each, thinnedToAnimals: null })))
    // Half as fast a growth is the root of its gain; who leaves today has fed today.
    const half = [2, Math.SQRT2, Math.SQRT2, 2, 2, 2, 2, 2, 2, 2]
    const dying = half.map((gain, day) => (day < 3 ? gain : 0))
    for (const { growth, futures } of changed(two, { kind: 'away', days: 2 }))
      expect([growth, ...futures.map((future) => future.growth)].map(gains)).toEqual([half, half, dying])
  })

  test('changes by one thing after another', () => {
    const both = changed(two, [{ kind: 'thin_less' }, { kind: 'culture_crashes', cultureId: 'R2' }])
    expect(both.map(({ thinnedToAnimals, growth }) => [thinnedToAnimals, growth[0]!.gain])).toEqual([
      ...[
        [null, 2],
        [null, 0],
      ],
    ])
    expect(changed(two, [])).toEqual(two)
  })
})

describe('a culture begun from another', () => {
  const start = { kind: 'start_culture', cultureId: 'R1', volumeL: 10, animals: 1e6, onDate: today } as const
  const on = (day: number) => ({ ...start, onDate: addDays(today, day) })

  test('takes from it today, in every future as large a part, and lives in its own litres', () => {
    const [R1, begun] = changed([culture('R1', { thinnedToAnimals: 3e6 })], start)
    expect([R1!.animals, ...R1!.futures.map(({ animals }) => animals)]).toEqual([3e6, 3e6, 1.5e6])
    expect(R1!.growth).toEqual(culture('R1').growth)
    expect(begun).toMatchObject({
      ...{ id: `started ${today} R1`, culture: null, standing: 'too_young', volumeL: 10, animals: 1e6 },
      ...{ goneShare: 0, mostShare: 0.3, floorAnimals: 5e5, thinnedToAnimals: 1.5e6 },
      sharesCausesWith: [{ cultureId: 'R1', causes: ['parent'] }],
    })
    // As dense as its parent it stands still: half the litres hold half as many. Its parent's death is not its own.
    const day = { gain: 2, crowding: 1 / 2e6 }
    for (const { growth } of [begun!, ...begun!.futures]) expect(growth).toEqual(new Array(days).fill(day))
    expect(begun!.futures.map(({ animals }) => animals)).toEqual([1e6, 1e6])
    expect(changed([culture('R1')], start)[1]!.thinnedToAnimals).toBeNull()
  })

  test('takes on a later day of what will be there then, and stands still until that day', () => {
    const [R1, begun] = changed([culture('R1')], on(4))
    expect([R1!.animals, gains(R1!.growth)]).toEqual([4e6, [2, 2, 2, 1.5, 2, 2, 2, 2, 2, 2]])
    expect(gains(R1!.futures[1]!.growth)).toEqual([2, 2, 2, 0, 0, 0, 0, 0, 0, 0])
    expect(begun!.growth.slice(0, 4)).toEqual(new Array(4).fill({ gain: 1, crowding: 0 }))
    expect(begun!.growth.slice(4)).toEqual(new Array(6).fill({ gain: 2, crowding: 1 / 2e6 }))
    // Thinned to 2e6 it is 2 * 2e6 / 1.5 by tomorrow, of which 1e6 are three eighths.
    const thinned = changed([culture('R1', { thinnedToAnimals: 2e6 })], on(1))
    expect(thinned[0]!.growth[0]!.gain).toBeCloseTo(2 * (1 - 3 / 8), 12)
  })

  test('leaves nothing where it takes all, begins today where its day is past, and is none of a culture that is empty', () => {
    expect(changed([culture('R1')], { ...start, animals: 5e6 })[0]!.animals).toBe(0)
    const gone = culture('R1', { growth: new Array(days).fill({ gain: 0, crowding: 0 }) })
    expect(changed([gone], on(2))[0]!.growth[1]!.gain).toBe(0)
    expect(changed([culture('R1')], on(-3))[0]).toEqual(changed([culture('R1')], start)[0])
    for (const ahead of [[culture('R2')], [culture('R1', { animals: 0 })]]) expect(changed(ahead, start)).toEqual(ahead)
    // One that is left with a few is not empty.
    expect(changed([culture('R1', { animals: 1 })], start)).toHaveLength(2)
  })

  test('gives when it is old enough and dense enough', () => {
    // By hand in 10 L: 1.00, 1.33 and 1.60 million on days 0, 1 and 2; it never reaches 2 million, 200 per mL.
    const firstDay = (firstHarvestAgeDays: number, firstHarvestPerMl: number, day = 0) =>
      changed([culture('R1')], on(day), { firstHarvestAgeDays, firstHarvestPerMl })[1]!.firstDay
    expect([firstDay(3, 150), firstDay(1, 150), firstDay(0, 100), firstDay(0, 101)]).toEqual([3, 2, 0, 1])
    expect([firstDay(0, 200), firstDay(12, 200)]).toEqual([days, 12])
    expect([firstDay(3, 150, 4), firstDay(1, 150, 4), firstDay(0, 50, 4)]).toEqual([7, 6, 4])
  })
})

test('rotifers bought in come on their day, packed 20,000 in a mL, and half of them live for two weeks', () => {
  const [, bought] = changed([culture('R1')], { kind: 'buy_in', animals: 5e6, onDate: addDays(today, 3) })
  // Assavaaree, Hagiwara, Ide, Maruyama & Lubzens 2001, Aquac. Res. 32:29-39.
  const halved = { gain: expect.closeTo(0.5 ** (1 / 14), 12), crowding: 0 }
  const growth = [...new Array(3).fill({ gain: 1, crowding: 0 }), ...new Array(7).fill(halved)]
  expect(bought).toEqual({
    ...{ id: `bought ${addDays(today, 3)}`, name: 'bought rotifers', culture: null, standing: 'gives', animals: 5e6 },
    ...{ volumeL: 0.25, floorAnimals: 0, mostShare: 1, goneShare: 0, thinnedToAnimals: null, firstDay: 3, growth },
    futures: new Array(2).fill({ animals: 5e6, growth }),
    sharesCausesWith: [],
  })
  const [past] = changed([], { kind: 'buy_in', animals: 5e6, onDate: addDays(today, -2) })
  expect([past!.firstDay, past!.growth]).toEqual([0, new Array(days).fill(halved)])
})
