import type { Round, UnitSystem } from '@fryward/shared'
import { typedNumber } from '@/features/records/typed-number.ts'

/** A room's settings as typed; temperature in the units chosen in the same form. */
export type RoomDraft = {
  name: string
  timeZone: string
  units: UnitSystem
  lightsOnAt: string
  lightsOffAt: string
  rounds: Round[]
  salinity: string
  temperature: string
}

/** The settings in the wire's units, or a sentence about what is missing. */
export function readRoom(draft: RoomDraft) {
  const salinity = typedNumber(draft.salinity, null, draft.units)
  const temperatureC = typedNumber(draft.temperature, 'degC', draft.units)
  if (salinity === undefined || temperatureC === undefined) return 'Salinity and temperature, as numbers.'
  const { name, timeZone, units, lightsOnAt, lightsOffAt } = draft
  const rounds = draft.rounds.toSorted((a, b) => a.at.localeCompare(b.at))
  return { name, timeZone, units, lightsOnAt, lightsOffAt, rounds, salinity, temperatureC }
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
