import type { Unit, UnitSystem } from '@fryward/shared'
import { parseNumber } from '@/base/quantities/format-number.ts'
import { toFieldUnit } from '@/base/quantities/room-units.ts'

/** A typed number in the wire's unit; undefined when the box is empty or holds no number. */
export function typedNumber(text: string, unit: Unit | null, system: UnitSystem): number | undefined {
  const typed = parseNumber(text)
  return typed === undefined ? undefined : toFieldUnit(unit, system).toWire(typed)
}

/** The number as a text to start a box with, in the room's unit. */
export function toTyped(value: number | null | undefined, unit: Unit | null, system: UnitSystem): string {
  if (value === null || value === undefined) return ''
  return String(Number(toFieldUnit(unit, system).toShown(value).toPrecision(4)))
}

/** Only the entries that hold something. */
export const filled = <T extends Record<string, unknown>>(entries: T): Partial<T> =>
  Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined && value !== '')) as Partial<T>
