import { poundG, toCelsius, toFahrenheit, usGallonL } from '@fryward/seawater'
import type { Quantity, Unit, UnitSystem } from '@fryward/shared'
import { singularUnitLabels, unitLabels } from '../labels/units.ts'

/** A number in the unit a person reads it in. */
export type Shown = { value: number; label: string }

// A jug is marked in litres or gallons, a syringe in mL everywhere: small volumes stay mL in both systems.
const volume = (valueL: number, system: UnitSystem): Shown => {
  if (Math.abs(valueL) < 1) return { value: valueL * 1000, label: 'mL' }
  if (system === 'metric') return { value: valueL, label: 'L' }
  if (Math.abs(valueL) < usGallonL) return { value: (valueL / usGallonL) * 4, label: 'qt' }
  return { value: valueL / usGallonL, label: 'gal' }
}

// Gram scales are what a live-food bench has; from a pound on salt is weighed by the bucket. common practice
const mass = (valueG: number, system: UnitSystem): Shown => {
  if (system === 'us' && valueG >= poundG) return { value: valueG / poundG, label: 'lb' }
  if (valueG >= 1000) return { value: valueG / 1000, label: 'kg' }
  return { value: valueG, label: 'g' }
}

/** The quantity as the room likes to read it. */
export function toShown(quantity: Quantity, system: UnitSystem): Shown {
  const { value, unit } = quantity
  if (unit === 'L') return volume(value, system)
  if (unit === 'mL') return Math.abs(value) >= 1000 ? volume(value / 1000, system) : { value, label: 'mL' }
  if (unit === 'g') return mass(value, system)
  if (unit === 'degC' && system === 'us') return { value: toFahrenheit(value), label: '°F' }
  if (unit === 'share') return { value: value * 100, label: '%' }
  return { value, label: (value === 1 ? singularUnitLabels[unit] : undefined) ?? unitLabels[unit] }
}

type FieldUnit = { label: string; toShown: (value: number) => number; toWire: (shown: number) => number }
const same = (label: string): FieldUnit => ({ label, toShown: (value) => value, toWire: (shown) => shown })

/** Digits that a gallon-to-litre conversion may carry without pretending to more than a jug can measure. */
const tidy = (value: number) => Number(value.toPrecision(6))

/** The one unit a form field is typed in; unlike `toShown` it never changes with the size of the number. */
export function toFieldUnit(unit: Unit | null, system: UnitSystem): FieldUnit {
  if (unit === null) return same('')
  if (unit === 'share')
    return { label: '%', toShown: (value) => tidy(value * 100), toWire: (shown) => tidy(shown / 100) }
  if (system === 'us' && unit === 'L')
    return {
      label: 'gal',
      toShown: (value) => tidy(value / usGallonL),
      toWire: (shown) => tidy(shown * usGallonL),
    }
  if (system === 'us' && unit === 'degC')
    return {
      label: '°F',
      toShown: (value) => tidy(toFahrenheit(value)),
      toWire: (shown) => tidy(toCelsius(shown)),
    }
  return same(unitLabels[unit])
}
