import { describe, expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
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
