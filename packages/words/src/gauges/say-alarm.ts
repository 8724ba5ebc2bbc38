import type { Alarm, AlarmKind, GaugeQuantity } from '@fryward/shared'
import { sayChange } from '../quantities/change.ts'
import { sayQuantity } from '../quantities/say-quantity.ts'
import type { UnitVoice } from '../voice.ts'

export const gaugeQuantityLabels = {
  temperature: 'Temperature',
  salinity: 'Salinity',
  ph: 'pH',
  oxygen: 'Oxygen',
  redox: 'Redox potential',
  level: 'Water level',
} as const satisfies Record<GaugeQuantity, string>

type Told = Pick<Alarm, 'kind' | 'value' | 'subject'> & {
  gauge: Pick<Alarm['gauge'], 'quantity' | 'unit' | 'low' | 'high'>
}

/** "Temperature in L1 is too high: 29.4 °C, and should be at most 28 °C". */
export function sayAlarm({ kind, value, subject, gauge }: Told, voice: UnitVoice): string {
  const place = `${gaugeQuantityLabels[gauge.quantity]} in ${subject.name}`
  if (kind === 'silent') return `${place}: nothing has been heard of its gauge`
  const say = (amount: number) => sayQuantity({ value: amount, unit: gauge.unit }, voice)
  const read = value === null ? null : say(value)
  if (kind === 'implausible')
    return read === null
      ? `${place}: its gauge sends nothing that water can be`
      : `${place}: its gauge reads ${read}, which no water here can be`
  if (kind === 'stuck') return `${place}: its gauge reads ${read ?? 'the same'} all the time and may be stuck`
  if (kind === 'too_fast')
    return `${place} ${sayChange(value ?? 0, gauge.unit, voice)} within an hour, which is too fast`
  const limit = kind === 'too_high' ? gauge.high : gauge.low
  const found = value === null ? '' : `: ${say(value)}`
  const wanted = limit === null ? '' : `, and should be ${kind === 'too_high' ? 'at most' : 'at least'} ${say(limit)}`
  return `${place} is too ${kind === 'too_high' ? 'high' : 'low'}${found}${wanted}`
}

// common practice, all of them: slow corrections, air first, hands dry where there is electricity.
const outside: Record<GaugeQuantity, Record<'too_high' | 'too_low', string>> = {
  temperature: {
    too_high:
      'With dry hands, unplug the heater at the socket. Turn up the air: warm water holds less oxygen. Take off the lid, and let it cool by no more than 1 °C an hour.',
    too_low:
      'With dry hands, look whether the heater has power and stands in the water. Warm up by no more than 1 °C an hour.',
  },
  salinity: {
    too_high: 'Top up with fresh water of the same warmth, a little at a time over some hours.',
    too_low: 'Look whether the top-up runs over. Bring it back with water changes, over a day and not at once.',
  },
  ph: {
    too_high: 'Test total ammonia: more of it harms at a higher pH. Look what was dosed last.',
    too_low:
      'Turn up the air and look for what has died. Then change a fifth with water of the same warmth and salinity.',
  },
  oxygen: {
    too_high: 'Look at the probe first. No animal here is harmed by a little more.',
    too_low: 'Turn up the air now and look at pump and stones. Do not feed until it is back.',
  },
  redox: {
    too_high: 'Stop any ozone or disinfectant, and look at the animals.',
    too_low: 'Look for what has died or lies uneaten, and test total ammonia.',
  },
  level: {
    too_high: 'Look at the outflow and at what runs in. Is the floor wet, stay off it until the power there is off.',
    too_low:
      'Look for a leak, and at heaters and pumps that run dry: unplug them with dry hands. Is the floor wet, turn off the power first.',
  },
}

// Until it can be believed again, what is worked out from it goes by hand-made tests and set points (husbandry).
const unbelieved = 'Until then it is not believed: hatch nights and amounts go by water tests and the set temperature.'
const ofTheGauge = {
  silent: 'Look whether the device has power and network. Until it reads again, look at the water by hand.',
  implausible: `Look whether the probe hangs in the water and its plug is dry, and test the water by hand. ${unbelieved}`,
  stuck: `Lift the probe out of the water for a minute: a sound one reads something else. Test the water by hand. ${unbelieved}`,
} as const satisfies Partial<Record<AlarmKind, string>>

/** What to do first, before anybody looks for the cause. */
export function firstSteps({ kind, value, gauge }: Told): string {
  if (kind === 'too_high' || kind === 'too_low') return outside[gauge.quantity][kind]
  if (kind === 'too_fast') return outside[gauge.quantity][(value ?? 0) >= 0 ? 'too_high' : 'too_low']
  return ofTheGauge[kind]
}
