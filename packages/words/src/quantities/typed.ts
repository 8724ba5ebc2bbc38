import type { Unit } from '@fryward/shared'
import { type ReadNumber, readNumber } from '../numbers/read-number.ts'
import { typeNumber } from '../numbers/type-number.ts'
import type { UnitVoice } from '../voice.ts'
import { toFieldUnit } from './shown.ts'

/** A typed number in the wire's unit, both readings of an unclear one, or what else the text is. */
export function readTyped(text: string, unit: Unit | null, voice: UnitVoice): ReadNumber {
  const { toWire } = toFieldUnit(unit, voice.units)
  const read = readNumber(text, voice)
  if (read.is === 'number') return { is: 'number', value: toWire(read.value) }
  if (read.is === 'unclear') return { is: 'unclear', readings: [toWire(read.readings[0]), toWire(read.readings[1])] }
  return read
}

/** The number where the text is one; undefined for an empty box, and for what the box asks about or refuses. */
export function typedNumber(text: string, unit: Unit | null, voice: UnitVoice): number | undefined {
  const read = readTyped(text, unit, voice)
  return read.is === 'number' ? read.value : undefined
}

/** The number as a text to start a box with, in the room's unit and with its own decimal mark. */
export function toTyped(value: number | null | undefined, unit: Unit | null, voice: UnitVoice): string {
  if (value === null || value === undefined) return ''
  return typeNumber(toFieldUnit(unit, voice.units).toShown(value), voice)
}
