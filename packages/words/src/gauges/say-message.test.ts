import { expect, test } from 'vitest'
import { sayMessage } from './say-message.ts'

const voice = { units: 'metric', locale: 'en-GB', timeZone: 'Europe/Lisbon' } as const
const now = '2026-03-10T03:20:00Z'
const alarm = {
  ...{ kind: 'too_high' as const, value: 29.4, raisedAt: '2026-03-10T03:00:00Z' },
  subject: { id: '1', kind: 'tank' as const, name: 'L1' },
  gauge: { id: '2', key: 't1', quantity: 'temperature' as const, unit: 'degC' as const, low: 24, high: 28 },
}
const told = { ordinal: 0, roomName: 'Back room', alarm, address: 'https://fish.example.org/rooms/1' }

test('a message of an alarm says what is wrong, since when, what to do first and where to take it', () => {
  const { title, text } = sayMessage({ ...told, occasion: 'raised' }, now, voice)
  expect(title).toBe('Back room: Temperature in L1 is too high: 29.4 °C, and should be at most 28 °C')
  expect(text).toMatch(
    /at most 28 °C, since 03:00\.\n\nFirst: With dry hands, unplug .*\n\nSay that you have it: https:/,
  )
})

test('a repeat says that nobody has it, and the end says that it is over', () => {
  expect(sayMessage({ ...told, occasion: 'raised', ordinal: 1 }, now, voice).text).toContain('Nobody has it yet.')
  expect(sayMessage({ ...told, occasion: 'over' }, now, voice).text).toMatch(/^It is over: Temperature in L1/)
})

test('a message to try says that nothing is wrong', () => {
  expect(sayMessage({ ...told, occasion: 'trial', alarm: null }, now, voice).text).toContain('Nothing is wrong.')
})
