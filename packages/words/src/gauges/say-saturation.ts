import type { OxygenSaturation } from '@fryward/shared'
import { sayNumber } from '../numbers/say-number.ts'
import { sayQuantity } from '../quantities/say-quantity.ts'
import type { UnitVoice } from '../voice.ts'

/** "97%": how much of what the water can hold an oxygen is. */
export const sayShareOfSaturation = (mgPerL: number, { mgPerL: held }: OxygenSaturation, voice: UnitVoice): string =>
  sayQuantity({ value: Math.round((mgPerL / held) * 100) / 100, unit: 'share' }, voice)

/** What saturation is here, by which water, so that nobody takes it for a limit of the gauge. */
export function saySaturation({ mgPerL, temperatureC, salinity, isRead }: OxygenSaturation, voice: UnitVoice): string {
  const warm = sayQuantity({ value: Math.round(temperatureC * 10) / 10, unit: 'degC' }, voice)
  const salt = sayNumber(Math.round(salinity * 10) / 10, voice)
  const held = sayQuantity({ value: Math.round(mgPerL * 10) / 10, unit: 'mg_per_L' }, voice)
  const said = `Saturated, water of ${warm} and salinity ${salt} holds ${held} of oxygen at sea level.`
  if (isRead.temperature && isRead.salinity) return said
  const set = isRead.temperature ? 'The salinity is' : isRead.salinity ? 'The warmth is' : 'Both are'
  return `${said} ${set} as set: nothing was read lately.`
}
