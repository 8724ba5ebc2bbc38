import type { GaugeQuantity, Unit } from '@fryward/shared'

type Measured = {
  /** What is kept and answered. */
  unit: Unit
  /** Outside of these no value of it makes sense, whatever hangs in the water. */
  lowest: number
  highest: number
  /** How values come in other units; the names are SenML's where it has one. */
  from: Record<string, (value: number) => number>
}

const asItIs = (value: number) => value

/**
 * What a gauge measures, and in which units it may say so. Unit names: RFC 8428 (SenML) table in section 12.1, and its
 * secondary units of RFC 8798; `C`, `F`, `psu`, `ppt` and `mg/L` are what sensor libraries write. Ranges are those of
 * probes sold for aquaria, widely drawn: common practice.
 */
export const quantities = {
  temperature: {
    unit: 'degC',
    lowest: -5,
    highest: 60,
    from: {
      Cel: asItIs,
      C: asItIs,
      degC: asItIs,
      K: (kelvin) => kelvin - 273.15,
      F: (fahrenheit) => ((fahrenheit - 32) * 5) / 9,
    },
  },
  salinity: { unit: 'psu', lowest: 0, highest: 80, from: { psu: asItIs, ppt: asItIs, '/1000': asItIs } },
  ph: { unit: 'pH', lowest: 0, highest: 14, from: { pH: asItIs } },
  oxygen: { unit: 'mg_per_L', lowest: 0, highest: 40, from: { 'mg/L': asItIs, 'mg/l': asItIs, mg_per_L: asItIs } },
  redox: { unit: 'mV', lowest: -1000, highest: 1000, from: { mV: asItIs, V: (volt) => volt * 1000 } },
  level: {
    unit: 'cm',
    lowest: -50,
    highest: 500,
    from: { cm: asItIs, m: (metre) => metre * 100, mm: (millimetre) => millimetre / 10 },
  },
} as const satisfies Record<GaugeQuantity, Measured>

/**
 * A value in the unit that is kept; null where the quantity has no such unit.
 * @param unit as it was posted; none means the unit that is kept.
 */
export function inKeptUnit(quantity: GaugeQuantity, value: number, unit: string | null): number | null {
  if (unit === null) return value
  const from: Record<string, (value: number) => number> = quantities[quantity].from
  return Object.hasOwn(from, unit) ? (from[unit]?.(value) ?? null) : null
}
