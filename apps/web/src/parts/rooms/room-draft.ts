import type { Round, Station, UnitSystem } from '@fryward/shared'
import { typedNumber } from '@/base/forms/typed-number.ts'
import { parseTime } from '@/base/forms/typed-time.ts'

/** A room's settings as typed: times as `parseTime` reads them, temperature in the units chosen in the same form. */
export type RoomDraft = {
  name: string
  timeZone: string
  units: UnitSystem
  lightsOnAt: string
  lightsOffAt: string
  rounds: Round[]
  stationOrder: Station[]
  salinity: string
  temperature: string
}

/** The settings in the wire's units, or a sentence about what is missing. */
export function readRoom(draft: RoomDraft) {
  const salinity = typedNumber(draft.salinity, null, draft.units)
  const temperatureC = typedNumber(draft.temperature, 'degC', draft.units)
  if (salinity === undefined || temperatureC === undefined) return 'Salinity and temperature, as numbers.'
  const { name, timeZone, units, stationOrder } = draft
  const lightsOnAt = parseTime(draft.lightsOnAt)
  const lightsOffAt = parseTime(draft.lightsOffAt)
  if (lightsOnAt === undefined || lightsOffAt === undefined)
    return 'Lights on and lights off, as times of day such as 7:30.'
  const rounds = readRounds(draft.rounds)
  if (typeof rounds === 'string') return rounds
  return { name, timeZone, units, lightsOnAt, lightsOffAt, rounds, stationOrder, salinity, temperatureC }
}

/** In the order of the day, or a sentence about the first that has no time. */
export function readRounds(typed: Round[]): Round[] | string {
  const rounds: Round[] = []
  for (const round of typed) {
    const at = parseTime(round.at)
    if (at === undefined) return `When the round ${round.name} starts, as a time of day such as 7:30.`
    rounds.push({ ...round, at })
  }
  return rounds.toSorted((a, b) => a.at.localeCompare(b.at))
}

/** The typed temperature in the other system, so that switching units keeps the water as warm as it was. */
export function withUnits(
  draft: RoomDraft,
  units: UnitSystem,
  toTyped: (valueC: number) => string,
): Partial<RoomDraft> {
  const temperatureC = typedNumber(draft.temperature, 'degC', draft.units)
  return temperatureC === undefined ? { units } : { units, temperature: toTyped(temperatureC) }
}
