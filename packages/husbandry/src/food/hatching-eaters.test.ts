import type { FoodChange } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { addDays, daysBetween } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import type { EaterAhead } from './eater-ahead.ts'
import { foodAhead } from './food-ahead.ts'

const today = '2026-03-10'
const at = (date: string) => `${date}T12:00:00.000Z`
const futures = 500
const eatersIn = (room: SnapshotBuilder, { changes = [] as FoodChange[], days = 28 } = {}): EaterAhead[] =>
  foodAhead(room.build(), {
    horizon: { today, days, futures },
    changes,
    record: { crashes: 0, cultureDays: 0, lived: [] },
  }).eaters

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const sdOf = (values: readonly number[]) => {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)))
}
/** What a clutch wants on its first day of food, in each future in which it hatches, as a logarithm. */
const firstDays = ({ futures: all }: EaterAhead) =>
  all.flatMap((future) => {
    const first = future.find((animals) => animals > 0)
    return first === undefined ? [] : [Math.log(first)]
  })

// The top-up's own defaults: 10 per mL, brought back from 5 at each of three feeds; 5 per mL more fill it at first.
const firstDayPerMl = 5 + 3 * 5

describe('a clutch that is to hatch', () => {
  const clutchOf = (eggs?: number) => {
    const room = new SnapshotBuilder()
    room.clutch(room.pair(), { spawnedAt: at('2026-03-06'), eggs })
    return eatersIn(room).find(({ kind }) => kind === 'clutch')!
  }

  test('wants of its first day what fills the water of its larvae, twenty in a litre, by four fifths of the eggs', () => {
    const wanted = firstDays(clutchOf(1000))
    // 800 larvae, 20 in a litre (Hoff 1996; Moorhead & Zeng 2010): 40 L.
    expect(Math.exp(mean(wanted)) / (40_000 * firstDayPerMl)).toBeGreaterThan(0.93)
    expect(Math.exp(mean(wanted)) / (40_000 * firstDayPerMl)).toBeLessThan(1.07)
    // Hunger is off by 0.3 as a logarithm, and the share that hatches by 0.1 of 0.8.
    expect(sdOf(wanted)).toBeCloseTo(Math.hypot(0.3, 0.1 / 0.8), 1)
  })

  test('is as large as its species lays where nobody counted it, and more in doubt', () => {
    // 500 to 1,200 eggs (Cheng et al. 2015): about 775, of which 620 hatch.
    expect(clutchOf().larvae).toBe(Math.round(0.8 * Math.sqrt(500 * 1200)))
    const wanted = firstDays(clutchOf())
    expect(Math.exp(mean(wanted)) / ((620 / 20) * 1000 * firstDayPerMl)).toBeGreaterThan(0.93)
    expect(Math.exp(mean(wanted)) / ((620 / 20) * 1000 * firstDayPerMl)).toBeLessThan(1.07)
    expect(sdOf(wanted)).toBeCloseTo(Math.hypot(0.3, 0.1 / 0.8, 0.35), 1)
    // Future by future the eggs alone are in doubt: four standard errors of a deviation of 0.35 are 0.044.
    const counted = firstDays(clutchOf(775))
    const eggs = wanted.map((each, index) => each - counted[index]!)
    expect(Math.abs(sdOf(eggs) - 0.35)).toBeLessThan(0.044)
    expect(Math.abs(mean(eggs))).toBeLessThan((4 * 0.35) / Math.sqrt(futures))
  })

  test('is half as large where a part of it is raised, and no larger than what is kept', () => {
    const room = new SnapshotBuilder()
    const clutch = room.clutch(room.pair(), { spawnedAt: at('2026-03-06'), eggs: 1000, intent: 'raise_part' })
    const [part] = eatersIn(room)
    expect(part?.larvae).toBe(400)
    expect(Math.exp(mean(firstDays(part!))) / (20_000 * firstDayPerMl)).toBeCloseTo(1, 1)
    const [kept] = eatersIn(room, { changes: [{ kind: 'keep_larvae', subjectId: clutch.id, larvae: 100 }] })
    expect(kept?.larvae).toBe(100)
    // A hundred in 5 L.
    expect(Math.exp(mean(firstDays(kept!))) / (5_000 * firstDayPerMl)).toBeCloseTo(1, 1)
    // So few still have the least that a tank is kept with, and never more than the tank that stands empty.
    const [few] = eatersIn(room, { changes: [{ kind: 'keep_larvae', subjectId: clutch.id, larvae: 10 }] })
    expect(Math.exp(mean(firstDays(few!))) / (5_000 * firstDayPerMl)).toBeCloseTo(1, 1)
    room.tank({ volumeL: 10 })
    expect(Math.exp(mean(firstDays(eatersIn(room)[0]!))) / (10_000 * firstDayPerMl)).toBeCloseTo(1, 1)
  })

  test('eats from the morning after its night on, to its last day on rotifers', () => {
    const clutch = clutchOf(1000)
    const nights = new Map(clutch.nights.map(({ date, probability }) => [date, probability]))
    for (const future of clutch.futures) {
      const first = future.findIndex((animals) => animals > 0)
      expect(nights.get(addDays(today, first - 1))).toBeGreaterThan(0)
      // Days 0 to 11 of life (rotiferLastDay of the species).
      expect(future.filter((animals) => animals > 0)).toHaveLength(12)
      expect(future.findLastIndex((animals) => animals > 0)).toBe(first + 11)
    }
  })
})

describe('a clutch that a pair is still to lay', () => {
  /** A pair that lays each fortnight; of four clutches one was raised. */
  const room = () => {
    const made = new SnapshotBuilder()
    const pair = made.pair()
    for (const [index, date] of ['2026-01-16', '2026-01-30', '2026-02-13', '2026-02-27'].entries()) {
      const clutch = made.clutch(pair, { spawnedAt: at(date), eggs: 400 })
      if (index > 0) made.fact('loss', clutch.id, at(addDays(date, 1)), { of: 'eggs', number: 400, cause: 'other' })
      else made.fact('hatch', clutch.id, at(addDays(date, 8)), { hatchedOn: addDays(date, 8), batchId: made.nextId() })
    }
    return { made, pair }
  }

  test('is raised as often as this room raises them, one of each counted besides', () => {
    const { made } = room()
    const [first] = eatersIn(made)
    expect(first?.kind).toBe('spawning')
    // Nights after which a day of food is left; two of six are raised.
    const hatches = first!.nights.filter(({ date }) => daysBetween(today, date) <= 26)
    const chance = hatches.reduce((sum, { probability }) => sum + probability, 0)
    const eats = first!.futures.filter((future) => future.some((animals) => animals > 0)).length / futures
    expect(chance).toBeGreaterThan(0.9)
    // Four standard errors of a third of five hundred are 0.085.
    expect(Math.abs(eats - (2 / 6) * chance)).toBeLessThan(0.085)
  })

  test('is followed by another an interval later, each with nights of its own', () => {
    const { made, pair } = room()
    const all = eatersIn(made, { days: 42 })
    expect(all.map(({ kind, subjectId, name, fedFrom }) => [kind, subjectId, name, fedFrom])).toEqual(
      all.map(() => ['spawning', pair.id, pair.name, []]),
    )
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
    expect(all.map(({ larvae }) => larvae)).toEqual(all.map(() => Math.round(0.8 * Math.sqrt(500 * 1200))))
    const nightOf = ({ nights }: EaterAhead) => {
      const chance = nights.reduce((sum, { probability }) => sum + probability, 0)
      return nights.reduce((sum, { date, probability }) => sum + daysBetween(today, date) * probability, 0) / chance
    }
    for (const { nights } of all) {
      expect(nights.every(({ probability }) => probability > 0 && probability <= 1)).toBe(true)
      expect(nights.reduce((sum, { probability }) => sum + probability, 0)).toBeLessThanOrEqual(1.000_001)
    }
    // Laid on the 13th at the earliest and hatched a week and more later; the next one a fortnight after it.
    expect(nightOf(all[0]!)).toBeGreaterThan(8)
    expect(nightOf(all[1]!) - nightOf(all[0]!)).toBeGreaterThan(11)
    expect(nightOf(all[1]!) - nightOf(all[0]!)).toBeLessThan(17)
    // No clutch of one future eats before it has hatched.
    const earliest = Math.min(...all[0]!.nights.map(({ date }) => daysBetween(today, date)))
    for (const future of all[0]!.futures)
      expect(future.slice(0, earliest + 1).every((animals) => animals === 0)).toBe(true)
  })
})
