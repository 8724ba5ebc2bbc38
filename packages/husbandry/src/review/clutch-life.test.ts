import { describe, expect, test } from 'vitest'
import { findSpecies } from '../species/index.ts'
import { BroodRoom } from '../testing/brood-room.ts'
import { hatchNights, metamorphosis } from '../thermal/index.ts'
import { reviewBroods } from './brood-review.ts'
import { expectedStages, numbersByDay, type TankTemperatures } from './clutch-life.ts'

const at = (setPointC: number | null): TankTemperatures => ({ readings: [], setPointC })

function expected(room: BroodRoom, setPointC: number | null = 27, lightsOffAt = '19:00') {
  const past = room.review(30)
  const review = reviewBroods(past)[0]!
  return expectedStages(past, { review, ofEggs: { ...at(setPointC), lightsOffAt }, ofLarvae: at(setPointC) })
}
const stageOf = (stages: ReturnType<typeof expected>, name: string) => stages.find(({ stage }) => stage === name)

describe('what is expected of a clutch', () => {
  const room = new BroodRoom()
  room.batch(8, [room.clutch(0, 90)], 80)

  test('is counted from its hatch once it has hatched, and sooner in warmer water', () => {
    const [warm, cool] = [expected(room, 28), expected(room, 26)]
    expect(stageOf(warm, 'day_5')).toEqual({ stage: 'day_5', from: '2026-03-14', to: '2026-03-14' })
    expect(stageOf(warm, 'metamorphosis')!.to < stageOf(cool, 'metamorphosis')!.to).toBe(true)
    // Six to nine days of eggs, and the morning after.
    const hatch = stageOf(warm, 'hatched')!
    expect(hatch.from >= '2026-03-07' && hatch.to <= '2026-03-12').toBe(true)
  })

  test('follows the evening over the tank of the eggs', () => {
    // What is ready at the half way between two evenings belongs to the one before: later evenings take more of it.
    const mornings = (lightsOffAt: string) =>
      [26, 26.5, 27, 27.5, 28].map((setPointC) => stageOf(expected(room, setPointC, lightsOffAt), 'hatched')!.from)
    expect(mornings('23:00').join() < mornings('12:00').join()).toBe(true)
  })

  test('is a window from the likely hatch nights while there are eggs', () => {
    const eggs = new BroodRoom()
    eggs.clutch(0, 90)
    const stages = expected(eggs)
    const { from, to } = stageOf(stages, 'hatched')!
    expect(from < to).toBe(true)
    expect(stageOf(stages, 'first_feed')).toEqual({ stage: 'first_feed', from, to })
    expect(stageOf(stages, 'metamorphosis')).toBeUndefined()
  })

  test('is a release for a mouthbrooder, with no metamorphosis', () => {
    const brooder = new BroodRoom()
    brooder.batch(22, [brooder.clutch(0, 45, { species: 'pterapogon-kauderni', care: 'mouth' })], 40)
    const names = expected(brooder).map(({ stage }) => stage)
    expect(names).toContain('hatched')
    expect(names).not.toContain('metamorphosis')
  })

  test('is told without the warmth where nobody knows it, and not at all for an unknown species', () => {
    const names = (stages: ReturnType<typeof expected>) => stages.map(({ stage }) => stage)
    expect(names(expected(room, null))).toEqual(['first_feed', 'day_5', 'settled'])
    expect(names(expected(room, 45))).toEqual(['first_feed', 'day_5', 'settled'])
    const unknown = new BroodRoom()
    unknown.clutch(0, 90, { species: 'gadus-morhua' })
    expect(expected(unknown)).toEqual([])
  })
})

describe('the windows of a clutch', () => {
  const room = new BroodRoom()
  const clutch = room.clutch(0, 90)
  room.batch(8, [clutch], 80)
  const past = room.review(30)
  const review = reviewBroods(past)[0]!
  const told = (warmth: TankTemperatures) =>
    expectedStages(past, { review, ofEggs: { ...warmth, lightsOffAt: '19:00' }, ofLarvae: warmth })
  const after = (date: string, days: number) =>
    new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10)
  const species = clutch.species

  test('are eight in ten of the nights, each with its morning, and of the days to metamorphosis', () => {
    const lightsOff = { time: '19:00', timeZone: 'UTC' }
    const { window80 } = hatchNights({
      spawnedAt: clutch.spawnedAt,
      lightsOff,
      species,
      temperatures: [],
      setPointC: 27,
    })
    const turned = metamorphosis({
      ...{ hatchedAt: '2026-03-09T12:00:00.000Z', timeZone: 'UTC', species, temperatures: [], setPointC: 27 },
    })
    const weaned = after('2026-03-09', findSpecies(species)!.feeding.weaningLastDay.value)
    expect(told(at(27))).toEqual([
      { stage: 'hatched', from: after(window80.from, 1), to: after(window80.to, 1) },
      { stage: 'first_feed', from: '2026-03-09', to: '2026-03-09' },
      { stage: 'day_5', from: '2026-03-14', to: '2026-03-14' },
      { stage: 'metamorphosis', ...turned.window80 },
      { stage: 'settled', from: weaned, to: weaned },
    ])
    // Weaned by the end of the third week to the second month.
    expect([weaned > '2026-03-25', weaned < '2026-05-09']).toEqual([true, true])
  })

  test('follow the eggs in their tank and the larvae in theirs', () => {
    const [ofEggs, ofLarvae] = [{ ...at(28), lightsOffAt: '19:00' }, at(25)]
    const apart = expectedStages(past, { review, ofEggs, ofLarvae })
    expect(stageOf(apart, 'hatched')).toEqual(stageOf(told(at(28)), 'hatched'))
    expect(stageOf(apart, 'metamorphosis')).toEqual(stageOf(told(at(25)), 'metamorphosis'))
  })

  test('go by what was read within 10 to 40 C, by the set point for the rest, and by nothing else', () => {
    const names = (warmth: TankTemperatures) => told(warmth).map(({ stage }) => stage)
    const cold = ['first_feed', 'day_5', 'settled']
    for (const setPointC of [10, 40]) expect(names(at(setPointC))).toContain('hatched')
    for (const setPointC of [9.9, 40.1]) expect(names(at(setPointC))).toEqual(cold)
    const read = (temperatureC: number) => [{ at: '2026-03-02T08:00:00.000Z', temperatureC }]
    expect(names({ readings: read(27), setPointC: null })).toContain('hatched')
    expect(names({ readings: read(50), setPointC: null })).toEqual(cold)
    expect(told({ readings: read(50), setPointC: 27 })).toEqual(told(at(27)))
    // A reading that is warmer than the set point brings them sooner.
    expect(told({ readings: read(30), setPointC: 25 })[0]!.from < told(at(25))[0]!.from).toBe(true)
  })
})

test('the days of a clutch are told for four hundred, counted where somebody counted', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 30)
  room.count(11, batch, 'larvae', 28)
  const numbers = (today: number) => {
    const past = room.review(today)
    return numbersByDay(past, reviewBroods(past)[0]!)
  }
  expect(numbers(12).map(({ on, isCounted }) => [on, isCounted])).toEqual([
    ['2026-03-09', true],
    ['2026-03-10', false],
    ['2026-03-11', false],
    ['2026-03-12', true],
    ['2026-03-13', false],
  ])
  // Whoever was counted on the 12th was there before.
  expect(numbers(12).map(({ atLeast, atMost }) => [atLeast, atMost])).toEqual([
    ...[
      [30, 30],
      [28, 30],
      [28, 30],
      [28, 28],
      [0, 28],
    ],
  ])
  expect([numbers(408), numbers(409)].map((each) => each.at(-1)?.ageDays)).toEqual([400, 400])
  expect(numbers(407).at(-1)?.ageDays).toBe(399)
})

test('the days of a clutch end with its last fish', () => {
  const room = new BroodRoom()
  const batch = room.batch(8, [room.clutch(0, 90)], 30)
  room.lose(10, batch, 30)
  const past = room.review(30)
  const numbers = numbersByDay(past, reviewBroods(past)[0]!)
  expect(numbers.map(({ ageDays, atLeast, atMost }) => [ageDays, atLeast, atMost])).toEqual([
    [0, 30, 30],
    [1, 30, 30],
    [2, 0, 0],
  ])
})
