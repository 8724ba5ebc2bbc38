import {
  type Locale,
  type Round,
  SalinitySchema,
  type Station,
  TemperatureCSchema,
  type UnitSystem,
} from '@fryward/shared'
import { parseTime, toTyped, typedNumber } from '@fryward/words'

/** A room's settings as typed: times as `parseTime` reads them, numbers in the units and the locale chosen in the same form. */
export type RoomDraft = {
  name: string
  timeZone: string
  units: UnitSystem
  locale: Locale
  lightsOnAt: string
  lightsOffAt: string
  rounds: Round[]
  stationOrder: Station[]
  salinity: string
  temperature: string
}

/** The settings in the wire's units, or a sentence about what is missing. */
export function readRoom(draft: RoomDraft) {
  const salinity = typedNumber(draft.salinity, null, draft)
  const temperatureC = typedNumber(draft.temperature, 'degC', draft)
  if (salinity === undefined || temperatureC === undefined) return 'Salinity and temperature, as numbers.'
  if (!SalinitySchema.safeParse(salinity).success) return 'The salinity of new water, from 0 to 45 as a meter shows it.'
  if (!TemperatureCSchema.safeParse(temperatureC).success)
    return `The temperature of new water, from ${toTyped(0, 'degC', draft)} to ${toTyped(40, 'degC', draft)} degrees.`
  const { name, timeZone, units, locale, stationOrder } = draft
  const lightsOnAt = parseTime(draft.lightsOnAt)
  const lightsOffAt = parseTime(draft.lightsOffAt)
  if (lightsOnAt === undefined || lightsOffAt === undefined)
    return 'Lights on and lights off, as times of day such as 7:30.'
  const rounds = readRounds(draft.rounds)
  if (typeof rounds === 'string') return rounds
  return { name, timeZone, units, locale, lightsOnAt, lightsOffAt, rounds, stationOrder, salinity, temperatureC }
}

/** In the order of the day, or a sentence about the first that has no time. */
export function readRounds(typed: Round[]): Round[] | string {
  const rounds: Round[] = []
  for (const round of typed) {
    const at = parseTime(round.at)
    if (round.name.trim() === '') return `A name for the round that starts at ${round.at}.`
    if (rounds.some((other) => other.at === at))
      return `Two rounds start at ${round.at}: give one of them another time.`
    if (at === undefined) return `When the round ${round.name} starts, as a time of day such as 7:30.`
    rounds.push({ ...round, at })
  }
  return rounds.toSorted((a, b) => a.at.localeCompare(b.at))
}

/** Other units or another way to write numbers: what is typed is written anew, so that the water stays as it was. */
export function withVoice(draft: RoomDraft, changed: Partial<Pick<RoomDraft, 'units' | 'locale'>>): Partial<RoomDraft> {
  const next = { ...draft, ...changed }
  const salinity = typedNumber(draft.salinity, null, draft)
  const temperatureC = typedNumber(draft.temperature, 'degC', draft)
  return {
    ...changed,
    ...(salinity === undefined ? {} : { salinity: toTyped(salinity, null, next) }),
    ...(temperatureC === undefined ? {} : { temperature: toTyped(temperatureC, 'degC', next) }),
  }
}
