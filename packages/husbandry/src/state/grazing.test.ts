import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { eatenPerLarvaPerHour, grazingOf } from './grazing.ts'

/** 200 larvae in 20 L, lights from 07:00 to 19:00; prey per mL counted and animals fed at the times given. */
function tankWith(seen: { at: string; perMl?: number; fed?: number; changedL?: number }[]) {
  const room = new SnapshotBuilder()
  const tank = room.tank({ volumeL: 20 })
  const batch = room.batch({ hatchedOn: '2026-03-07', tankId: tank.id, larvae: 200 })
  for (const { at, perMl, fed, changedL } of seen) {
    const instant = `2026-03-${at}:00.000Z`
    if (perMl !== undefined)
      room.fact('count', batch.id, instant, { of: 'prey_rotifers', animals: [perMl * 10], volumeMl: 10 })
    if (changedL !== undefined) room.fact('water_change', tank.id, instant, { removedL: changedL, addedL: changedL })
    if (fed !== undefined) room.fact('feeding', batch.id, instant, { food: 'rotifers', animals: fed })
  }
  return grazingOf(room.build(), { batch, tank, prey: 'rotifers', until: '2026-03-12T00:00:00.000Z' })
}

const day = [
  { at: '09T06:55', perMl: 2 },
  { at: '09T07:00', fed: 160_000 },
  { at: '09T12:00', perMl: 6 },
]

test('what is eaten in the light and in the dark is learned apart', () => {
  const learned = tankWith([
    ...day,
    { at: '09T18:40', perMl: 4 },
    { at: '09T19:00', fed: 120_000 },
    { at: '10T07:00', perMl: 9 },
  ])
  // Of 20 L by 200: 10 to 6 per mL in 5 h of light, and 6 to 4 in 6 h 40 with no feed between; 10 to 9 in 12 h of dark.
  const byLight = [(4 * 20_000) / (200 * 5), (2 * 20_000) / (200 * (6 + 2 / 3))]
  expect(learned?.light?.eatenPerLarvaPerHour).toBeCloseTo((byLight[0]! + byLight[1]!) / 2, 6)
  expect(learned?.dark?.eatenPerLarvaPerHour).toBeCloseTo((1 * 20_000) / (200 * 12), 6)
  expect(eatenPerLarvaPerHour(learned!, { light: 1, dark: 12 })).toBeCloseTo((55 + 12 * (100 / 12)) / 13, 6)
})

test('where only the light is known, nothing is taken to be eaten in the dark', () => {
  const learned = tankWith(day)
  expect(learned?.dark).toBeNull()
  expect(eatenPerLarvaPerHour(learned!, { light: 6, dark: 6 })).toBeCloseTo(40, 6)
})

test('a tank found empty says that they ate so much or more: it raises what was learned and never lowers it', () => {
  const empty = (fed: number) =>
    tankWith([...day, { at: '10T06:55', perMl: 0 }, { at: '10T07:00', fed }, { at: '10T12:00', perMl: 0 }])
  // 40,000 eaten in 5 h would be 40 an hour; the other morning showed 80.
  expect(empty(40_000)?.light?.eatenPerLarvaPerHour).toBeCloseTo(80, 6)
  expect(empty(200_000)?.light?.eatenPerLarvaPerHour).toBeCloseTo(200, 6)
})

test('what left with changed water was not eaten', () => {
  const [count, fed, after] = day
  const learned = tankWith([count!, fed!, { at: '09T11:00', changedL: 4 }, after!])
  // Of the 10 per mL 6 are left; a fifth of the 8 that were there between left with 4 L of 20.
  expect(learned?.light?.eatenPerLarvaPerHour).toBeCloseTo(((4 - 8 / 5) * 20_000) / (200 * 5), 6)
})

test('a count long before a feed, or minutes after one, tells nothing of what is eaten', () => {
  const [count, fed, after] = day
  expect(tankWith([{ at: '08T18:40', perMl: 12 }, fed!, { at: '09T07:05', perMl: 9 }])).toBeNull()
  expect(tankWith([count!, fed!, { at: '09T07:05', perMl: 9 }])).toBeNull()
  expect(tankWith([{ at: '08T18:40', perMl: 12 }, fed!, after!])).toBeNull()
})

test('a count speaks for two hours before its feed, and what is found speaks from an hour after it for a day', () => {
  const learns = (before: string, after: string) =>
    tankWith([
      { at: before, perMl: 2 },
      { at: '09T09:00', fed: 160_000 },
      { at: after, perMl: 6 },
    ]) !== null
  expect([learns('09T07:00', '09T12:00'), learns('09T06:55', '09T12:00')]).toEqual([true, false])
  expect([learns('09T08:55', '09T10:00'), learns('09T08:55', '09T09:55')]).toEqual([true, false])
  // A day and a night: half of it is dark, and speaks for neither.
  expect(learns('09T08:55', '10T09:00')).toBe(false)
})

test('four fifths of the hours in the light speak for the light, less for neither', () => {
  const learned = (after: string) =>
    tankWith([
      { at: '09T12:55', perMl: 2 },
      { at: '09T13:00', fed: 160_000 },
      { at: after, perMl: 6 },
    ])
  // Six hours until lights off at 19:00; seven and a half in all are four fifths.
  expect(learned('09T20:29')?.light).not.toBeNull()
  expect(learned('09T20:40')).toBeNull()
  const dark = (from: string) =>
    tankWith([
      { at: from, perMl: 2 },
      { at: from, fed: 160_000 },
      { at: '10T07:00', perMl: 9 },
    ])?.dark ?? null
  // Twelve hours of dark and three of light before them are four fifths.
  expect(dark('09T16:01')).not.toBeNull()
  expect(dark('09T15:40')).toBeNull()
})

test('two counts with no feed between them tell as well: so does a morning on which enough was left', () => {
  const learned = tankWith([
    { at: '09T07:15', perMl: 6.4 },
    { at: '09T18:40', perMl: 2.3 },
  ])
  expect(learned?.light?.eatenPerLarvaPerHour).toBeCloseTo((4.1 * 20_000) / (200 * (11 + 25 / 60)), 6)
  // A day and a night later births and losses have drowned it.
  expect(tankWith([...[{ at: '09T07:15', perMl: 6.4 }], { at: '10T18:40', perMl: 2.3 }])).toBeNull()
})

test('larvae grow: what was seen more than three days before the last look is left out', () => {
  const morning = (day: string, fed: number) => [
    { at: `${day}T06:55`, perMl: 0.1 },
    { at: `${day}T07:00`, fed },
    { at: `${day}T12:00`, perMl: 0.1 },
  ]
  const perHour = (fed: number) => fed / (200 * 5)
  const learned = (...days: { at: string; perMl?: number; fed?: number }[][]) =>
    tankWith(days.flat())?.light?.eatenPerLarvaPerHour
  // Noon to noon: three days are still within.
  expect(learned(morning('08', 20_000), morning('11', 100_000))).toBeCloseTo(
    (perHour(20_000) + perHour(100_000)) / 2,
    6,
  )
  expect(learned(morning('07', 20_000), morning('11', 100_000))).toBeCloseTo(perHour(100_000), 6)
})
