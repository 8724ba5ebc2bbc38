import { foodAhead, type RoomSnapshot } from '@fryward/husbandry'
import { expect, test } from 'vitest'
import { randomRoom } from '../../../husbandry/src/testing/random-room.ts'
import { SnapshotBuilder } from '../../../husbandry/src/testing/snapshot-builder.ts'
import { foodAsked } from './food-asked.ts'

const date = '2026-03-10'
const now = `${date}T12:00:00.000Z`
const record = { crashes: 1, cultureDays: 100, lived: [] }
const askedOf = (snapshot: RoomSnapshot) => foodAsked(snapshot, { now, record })

test('what is handed over of a room says of its food what the whole room says', () => {
  for (let seed = 1; seed <= 12; seed += 1) {
    const whole = randomRoom(seed, date).build()
    const { snapshot, asked } = askedOf(whole)
    const horizon = { ...asked.horizon, days: 10, futures: 3 }
    expect(foodAhead(snapshot, { horizon, record, changes: [] })).toEqual(
      foodAhead({ ...whole, foodPlan: null }, { horizon, record, changes: [] }),
    )
  }
})

test('the question is of three weeks from the day that it is here', () => {
  const { asked } = foodAsked(new SnapshotBuilder({ timeZone: 'Pacific/Auckland' }).build(), { now, record })
  expect(asked).toEqual({ horizon: { today: '2026-03-11', days: 21, futures: 300 }, record })
})

test('is the same whatever else happens: to grown fish, in tanks without eggs, and with another plan', () => {
  const room = randomRoom(3, date)
  const pairs = room.tank({ kind: 'broodstock' })
  const clutch = room.clutch(room.pair({ tankId: pairs.id }), { spawnedAt: '2026-03-08T12:00:00.000Z' })
  const bare = room.tank({ kind: 'grow_out' })
  const before = askedOf(room.build()).snapshot
  const group = room.group({ settledOn: '2026-03-01', tankId: bare.id, number: 40 })
  room.fact('loss', group.id, now, { of: 'juveniles', number: 2, cause: 'other' })
  room.fact('water_test', bare.id, now, { temperatureC: 24 })
  room.fact('care', room.snapshot.room.id, now, { act: 'fish_arrived' })
  room.snapshot.foodPlan = null
  expect(askedOf(room.build()).snapshot).toEqual(before)
  // But eggs are as warm as their tank was read, and by what a gauge read of it.
  const kinds = [
    room.fact('water_test', pairs.id, now, { temperatureC: 24 }),
    room.fact('water_test', clutch.tankId, now, { temperatureC: 25 }),
  ]
  const facts = askedOf(room.build()).snapshot.facts.map(({ id }) => id)
  expect(kinds.filter(({ id }) => !facts.includes(id))).toEqual([])
})
