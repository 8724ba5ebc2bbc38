import type { Gauge } from '@fryward/shared'
import type { UnitVoice } from '@fryward/words'
import { expect, test } from 'vitest'
import { toTypedGauge, typedLimits, usualOf } from './typed-gauge.ts'

const id = '01900000-0000-7000-8000-000000000001'
const limits = { low: 24, high: 28, forMinutes: 15, silentAfterMinutes: 45, maxPerHour: 2.5, stuckAfterHours: 12 }
const gauge: Gauge = {
  ...{ id, deviceId: id, key: 't1', quantity: 'temperature', unit: 'degC', offset: 0, ...limits },
  subject: { id, kind: 'tank', name: 'T1' },
  ...{ latest: null, saturation: null, endedAt: null, version: 1 },
}
const german: UnitVoice = { units: 'metric', locale: 'de-DE' }
const american: UnitVoice = { units: 'us', locale: 'en-US' }

test('limits come back as they were, in the room’s units and as its locale writes numbers', () => {
  const metric = toTypedGauge(gauge, { roomId: id, voice: german })
  expect([metric.low, metric.maxPerHour]).toEqual(['24', '2,5'])
  expect(typedLimits(metric, { unit: 'degC', usual: usualOf(gauge), voice: german })).toEqual(limits)
  const us = toTypedGauge(gauge, { roomId: id, voice: american })
  // 24 °C is 75.2 °F; a change of 2.5 °C is one of 4.5 °F.
  expect([us.low, us.maxPerHour]).toEqual(['75.2', '4.5'])
  const back = typedLimits(us, { unit: 'degC', usual: usualOf(gauge), voice: american })
  expect(back.low).toBeCloseTo(24, 6)
  expect(back.maxPerHour).toBeCloseTo(2.5, 6)
})

test('what is left empty is no limit, and the usual minutes', () => {
  const typed = toTypedGauge(undefined, { roomId: id, voice: german })
  expect([typed.forMinutes, typed.silentAfterMinutes, typed.stuckAfterHours]).toEqual(['10', '30', '24'])
  const emptied = { ...typed, forMinutes: '', silentAfterMinutes: '', stuckAfterHours: '' }
  expect(typedLimits(emptied, { unit: 'degC', usual: usualOf(undefined), voice: german })).toEqual({
    ...{ low: null, high: null, maxPerHour: null, stuckAfterHours: null },
    ...{ forMinutes: 10, silentAfterMinutes: 30 },
  })
})
