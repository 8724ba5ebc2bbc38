import { describe, expect, it } from 'vitest'
import { estimateCulture } from './culture-estimate.ts'
import { fitCulture } from './culture-fit.ts'
import type { CultureHistory } from './culture-history.ts'
import { learningPart } from './learning-part.ts'

const started = (observations: CultureHistory['observations'], removals: CultureHistory['removals'] = []) => ({
  observations,
  removals,
  ...{ strain: 'L' as const, temperatureC: 25, salinity: 22 },
})

/** Per mL, eggs a female, and the share then taken, morning after morning from a restart with 92 per mL by the book. */
const MORNINGS = [
  [252, 0.22, 0],
  [318, 0.6, 0],
  [503, 0.25, 0.2],
  [428, 0.3, 0.5],
  [322, 0.28, 0.5],
  [342, 0.47, 0.44],
  [258, 0.4, 0.5],
  [140, 0.67, 0.5],
  [147, 0.57, 0.46],
  [129, 0.52, 0.38],
  [157, 0.48, 0.33],
  [139, 0.83, 0.37],
  [141, 0.57, 0.42],
  [128, 0.47, 0.36],
] as const

/** An invented culture that grew by half a day while thin; more had been in it at first than was written down. */
const guessedTooLow = started(
  [
    { day: 0, densityPerMl: 92 },
    ...MORNINGS.map(([densityPerMl, eggRatio], index) => ({ day: index + 1, densityPerMl, eggRatio })),
  ],
  MORNINGS.map(([, , fraction], index) => ({ day: index + 1, fraction })),
)

const countedDaily = (days: number) =>
  started(Array.from({ length: days + 1 }, (_, day) => ({ day, densityPerMl: 100 + day })))

const until = ({ observations, removals = [], ...rest }: CultureHistory, day: number): CultureHistory => ({
  ...rest,
  observations: observations.filter((each) => each.day <= day),
  removals: removals.filter((each) => each.day <= day),
})

/** What was expected of the count of a day on the day before, over what was counted. */
function expectedOverCounted(history: CultureHistory, day: number, every?: (ageDays: number) => number): number {
  const known = until(history, day - 1)
  const parameters = fitCulture(learningPart(known, every))
  const counted = history.observations.find((each) => each.day === day)!.densityPerMl
  return estimateCulture(known, parameters, { atDay: day }).densityPerMl / counted
}

describe('the part of a history that rates are learned from', () => {
  it('is all of it while little has been counted, and then what had been seen by the last learning', () => {
    const lastLearned = (days: number) => learningPart(countedDaily(days)).observations.at(-1)?.day
    expect([2, 7, 11, 12, 15, 16, 27, 28, 34, 35].map(lastLearned)).toEqual([2, 7, 10, 12, 15, 16, 24, 28, 28, 35])
  })

  it('reaches back thirty days', () => {
    expect(learningPart(countedDaily(49)).observations.map(({ day }) => day)).toEqual(
      Array.from({ length: 30 }, (_, index) => 20 + index),
    )
  })

  it('is all of it until three counts have been learned from', () => {
    const onDays = (...days: number[]) => started(days.map((day) => ({ day, densityPerMl: 100 })))
    // On day 9 a culture was last learned from on day 8.
    expect(learningPart(onDays(1, 4, 8, 9)).observations.map(({ day }) => day)).toEqual([1, 4, 8])
    expect(learningPart(onDays(4, 8, 9)).observations.map(({ day }) => day)).toEqual([4, 8, 9])
  })

  it('holds what was taken out and put in meanwhile, and all else that is known of the culture', () => {
    const moves = [4, 5, 33, 34, 35].map((day) => ({ day, fraction: 0.1, addedPerMl: 1 }))
    const { removals, additions, ...rest } = learningPart({ ...countedDaily(34), removals: moves, additions: moves })
    expect(removals!.map(({ day }) => day)).toEqual([4, 5])
    expect(additions!.map(({ day }) => day)).toEqual([4, 5])
    expect(rest).toMatchObject({ strain: 'L', temperatureC: 25, salinity: 22 })
    const { observations } = countedDaily(34)
    expect(learningPart({ observations })).toMatchObject({ removals: [], additions: [] })
    expect(learningPart({ observations: [] })).toEqual({ observations: [] })
  })

  it('does not believe the first days of a culture for a week against all that is counted', () => {
    const last = MORNINGS.length
    expect(expectedOverCounted(guessedTooLow, last)).toBeLessThan(1.35)
    // As it was when every culture waited a week.
    expect(expectedOverCounted(guessedTooLow, last, () => 7)).toBeGreaterThan(1.7)
  })
})
