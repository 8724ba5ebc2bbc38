import { expect, test } from 'vitest'
import { saySaturation, sayShareOfSaturation } from './say-saturation.ts'

const voice = { units: 'metric', locale: 'en-GB', timeZone: 'UTC' } as const
// Standard Methods, Table 4500-O:I: 6.615 mg/L at 26 C and chlorinity 20.
const held = { mgPerL: 6.615, temperatureC: 26, salinity: 36.131, isRead: { temperature: true, salinity: true } }

test('oxygen is said as a share of what the water holds', () => {
  expect(sayShareOfSaturation(5.2, held, voice)).toBe('79%')
  expect(sayShareOfSaturation(7, held, voice)).toBe('106%')
})

test('saturation says of which water, in the units of the room, and what of it was not read', () => {
  expect(saySaturation(held, voice)).toBe(
    'Saturated, water of 26 °C and salinity 36.1 holds 6.6 mg/L of oxygen at sea level.',
  )
  expect(saySaturation(held, { ...voice, units: 'us' })).toContain('water of 78.8 °F')
  const said = (temperature: boolean, salinity: boolean) =>
    saySaturation({ ...held, isRead: { temperature, salinity } }, voice).split('. ')[1]
  expect([said(true, false), said(false, true), said(false, false)]).toEqual([
    'The salinity is as set: nothing was read lately.',
    'The warmth is as set: nothing was read lately.',
    'Both are as set: nothing was read lately.',
  ])
})
