import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { heldBy, oxygenHeld } from './oxygen-held.ts'

const at = '2026-03-10T12:00:00.000Z'
const gauge = { gaugeId: '019abc00-0000-7000-8000-000000000001', gaugeKey: 'probe', readings: 3600 }

/** What is taken for a tank set to 26 C and 35, in which so much was read then. */
function knownAfter(kind: 'water_test' | 'water_reading', readAt: string, values: object) {
  const room = new SnapshotBuilder()
  const tank = room.tank({ temperatureC: 26, salinity: 35 })
  if (kind === 'water_test') room.fact(kind, tank.id, readAt, values)
  else room.fact(kind, tank.id, readAt, { ...gauge, from: readAt, ...values })
  const { temperatureC, salinity } = oxygenHeld(room.build(), tank, at)
  return [temperatureC.value, salinity.value]
}

// A heater that fails cools a tank in half a day; salt does not leave it. Longer than that the tank is taken as it is set.
test('a thermometer speaks for half a day before and after, a hydrometer for a week, a gauge until its next note', () => {
  const warm = { temperatureC: 20, salinity: 30 }
  expect(knownAfter('water_test', '2026-03-10T00:05:00.000Z', warm)).toEqual([20, 30])
  expect(knownAfter('water_test', '2026-03-09T23:55:00.000Z', warm)).toEqual([26, 30])
  expect(knownAfter('water_test', '2026-03-10T23:55:00.000Z', warm)).toEqual([20, 30])
  expect(knownAfter('water_test', '2026-03-11T00:05:00.000Z', warm)).toEqual([26, 30])
  expect(knownAfter('water_test', '2026-03-03T12:05:00.000Z', warm)).toEqual([26, 30])
  expect(knownAfter('water_test', '2026-03-03T11:55:00.000Z', warm)).toEqual([26, 35])
  // Noted once a day, an hour late: 26 hours.
  expect(knownAfter('water_reading', '2026-03-09T10:05:00.000Z', { temperatureC: 20 })).toEqual([20, 35])
  expect(knownAfter('water_reading', '2026-03-09T09:55:00.000Z', { temperatureC: 20 })).toEqual([26, 35])
})

test('water that the table of saturation does not know holds as much as the nearest that it does', () => {
  expect(heldBy({ temperatureC: 55, salinity: 35 })).toBe(heldBy({ temperatureC: 50, salinity: 35 }))
  expect(heldBy({ temperatureC: 49, salinity: 35 })).toBeGreaterThan(heldBy({ temperatureC: 50, salinity: 35 }))
  expect(heldBy({ temperatureC: 26, salinity: 60 })).toBe(heldBy({ temperatureC: 26, salinity: 45.2 }))
  expect(heldBy({ temperatureC: 26, salinity: 44 })).toBeGreaterThan(heldBy({ temperatureC: 26, salinity: 45.2 }))
})
