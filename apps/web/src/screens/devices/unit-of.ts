import type { GaugeQuantity, Unit } from '@fryward/shared'

/** What each quantity is kept in, as the API answers it of a gauge. */
export const unitOf = {
  temperature: 'degC',
  salinity: 'psu',
  ph: 'pH',
  oxygen: 'mg_per_L',
  redox: 'mV',
  level: 'cm',
} as const satisfies Record<GaugeQuantity, Unit>
