import { expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { roundsInOrder } from '../calendar/rounds.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { artemiaLeft } from './artemia-left.ts'

type Seen = { at: string; perMl?: number; fed?: number; changedL?: number }

/**
 * Artemia per mL left at 18:30 with 100 larvae in 20 L, lights from 07:00 to 19:00. Yesterday they ate 2 of 3 per mL
 * in five hours: 40,000 by 100 in 5 h, 80 each an hour.
 */
function left(...seen: Seen[]): number | null {
  const room = new SnapshotBuilder()
  const tank = room.tank({ volumeL: 20 })
  const batch = room.batch({ hatchedOn: '2026-03-01', tankId: tank.id, larvae: 100 })
  const yesterday: Seen[] = [
    { at: '09T06:55', perMl: 0 },
    { at: '09T07:00', fed: 60_000 },
    { at: '09T12:00', perMl: 1 },
  ]
  for (const { at, perMl, fed, changedL } of [...yesterday, ...seen]) {
    const instant = `2026-03-${at}:00.000Z`
    if (perMl !== undefined)
      room.fact('count', batch.id, instant, { of: 'prey_artemia', animals: [perMl * 10], volumeMl: 10 })
    if (changedL !== undefined) room.fact('water_change', tank.id, instant, { removedL: changedL, addedL: changedL })
    if (fed !== undefined) room.fact('feeding', batch.id, instant, { food: 'artemia', animals: fed })
  }
  const day = husbandryDay({ room: room.snapshot.room, date: '2026-03-10' })
  return artemiaLeft(room.build(), { batch, tank, round: roundsInOrder(day).at(-1)!, day })
}

test('what is left is what was found and given since, less what they eat by the hour', () => {
  // From 14:30 on four hours: 32,000 of 20 L are 1.6 per mL.
  expect(left({ at: '10T14:30', perMl: 3 })).toBeCloseTo(1.4, 6)
  // 20,000 more are one more in each millilitre.
  expect(left({ at: '10T14:30', perMl: 3 }, { at: '10T15:00', fed: 20_000 })).toBeCloseTo(2.4, 6)
  expect(left({ at: '10T14:30', perMl: 3 }, { at: '10T14:00', fed: 20_000 })).toBeCloseTo(1.4, 6)
  expect(left({ at: '10T14:30', perMl: 1 })).toBe(0)
})

test('what left with changed water is gone: a quarter of it with 5 of 20 L', () => {
  expect(left({ at: '10T14:30', perMl: 3 }, { at: '10T16:00', changedL: 5 })).toBeCloseTo(1.4 * 0.75, 6)
  expect(left({ at: '10T14:30', perMl: 3 }, { at: '10T14:00', changedL: 5 })).toBeCloseTo(1.4, 6)
  // In the same round it is changed before they are fed.
  expect(left({ at: '10T14:30', perMl: 3 }, { at: '10T18:34', changedL: 5 })).toBeCloseTo(1.4 * 0.75, 6)
})

test('nobody knows more than a day after the last look', () => {
  expect(left()).toBeNull()
  expect(left({ at: '09T18:29', perMl: 3 })).toBeNull()
  expect(left({ at: '09T18:30', perMl: 30 })).not.toBeNull()
})
