import { fahrenheitPerC } from '@fryward/seawater'
import type { Unit } from '@fryward/shared'
import { sayNumber } from '../numbers/say-number.ts'
import type { UnitVoice } from '../voice.ts'
import { toShown } from './shown.ts'

/** How many of the room's degrees a change of one of ours is; a difference has no zero to move. */
export const changeFactor = (unit: Unit, { units }: Pick<UnitVoice, 'units'>): number =>
  unit === 'degC' && units === 'us' ? fahrenheitPerC : 1

/** What a change is told in: "°F". */
export const changeLabel = (unit: Unit, { units }: Pick<UnitVoice, 'units'>): string =>
  toShown({ value: 0, unit }, units).label

/** "rose by 2.1 °C", "fell by 3.8 °F". */
export function sayChange(change: number, unit: Unit, voice: UnitVoice): string {
  const amount = sayNumber(Math.abs(change) * changeFactor(unit, voice), voice)
  return `${change >= 0 ? 'rose' : 'fell'} by ${amount} ${changeLabel(unit, voice)}`.trimEnd()
}
