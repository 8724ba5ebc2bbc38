import type { GaugeQuantity } from '@fryward/shared'

type Measured = {
  /** Beyond these no water that animals live in is: the probe is wrong, hangs dry or was taken out. */
  plausible: { low: number; high: number }
  /** Outside of these no value of it makes sense, whatever hangs in the water. */
  lowest: number
  highest: number
  /** How values come in other units; the names are SenML's where it has one. */
  from: Record<string, (value: number) => number>
}

const asItIs = (value: number) => value

/**
 * Which values of a quantity make sense, and in which units they may come; they are kept in `unitOfGauge`. Unit names: RFC
 * 8428 (SenML), table in section 12.1, and its secondary units of RFC 8798; `C`, `F`, `psu`, `ppt` and `mg/L` are what
 * sensor libraries write. Ranges are those of probes sold for aquaria, widely drawn: common practice. What is plausible is narrower,
 * and from memory.
 */
export const quantities = {
  temperature: {
    plausible: { low: 0, high: 40 },
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
  salinity: {
    plausible: { low: 0, high: 45 },
    lowest: 0,
    highest: 80,
    from: { psu: asItIs, ppt: asItIs, '/1000': asItIs },
  },
  ph: { plausible: { low: 5, high: 10.5 }, lowest: 0, highest: 14, from: { pH: asItIs } },
  oxygen: {
    plausible: { low: 0, high: 25 },
    lowest: 0,
    highest: 40,
    from: { 'mg/L': asItIs, 'mg/l': asItIs, mg_per_L: asItIs },
  },
  redox: {
    plausible: { low: -500, high: 900 },
    lowest: -1000,
    highest: 1000,
    from: { mV: asItIs, V: (volt) => volt * 1000 },
  },
  level: {
    plausible: { low: -50, high: 500 },
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
