import { alarmKinds, gaugeQuantities } from '@fryward/shared'
import { expect, test } from 'vitest'
import { firstSteps, sayAlarm } from './say-alarm.ts'

const metric = { units: 'metric', locale: 'en-GB' } as const
const told = (kind: (typeof alarmKinds)[number], quantity: (typeof gaugeQuantities)[number] = 'temperature') => ({
  kind,
  value: kind === 'silent' ? null : 29.4,
  subject: { id: '1', kind: 'tank' as const, name: 'L1' },
  gauge: { quantity, unit: 'degC' as const, low: 24, high: 28 },
})

test('an alarm says where, what it read and what it should be, in the units of the room', () => {
  expect(sayAlarm(told('too_high'), metric)).toBe('Temperature in L1 is too high: 29.4 °C, and should be at most 28 °C')
  expect(sayAlarm(told('too_low'), { ...metric, units: 'us' })).toMatch(
    /too low: 84\.9 °F, and should be at least 75\.2 °F/,
  )
  expect(sayAlarm({ ...told('too_fast'), value: -2 }, { ...metric, units: 'us' })).toBe(
    'Temperature in L1 fell by 3.6 °F within an hour, which is too fast',
  )
  expect(sayAlarm(told('stuck'), metric)).toBe(
    'Temperature in L1: its gauge reads 29.4 °C all the time and may be stuck',
  )
  expect(sayAlarm({ ...told('implausible'), value: null }, metric)).toContain('sends nothing that water can be')
  expect(sayAlarm(told('silent'), metric)).toBe('Temperature in L1: nothing has been heard of its gauge')
})

test('every alarm of every quantity says what to do first', () => {
  for (const quantity of gaugeQuantities)
    for (const kind of alarmKinds) expect(firstSteps(told(kind, quantity))).toMatch(/\.$/)
  expect(firstSteps(told('too_high'))).toMatch(/dry hands.*unplug/i)
})
