import type { Unit } from '@fryward/shared'

/** Behind a one: "1 day since the count". */
export const singularUnitLabels: Partial<Record<Unit, string>> = {
  animals: 'animal',
  eggs: 'egg',
  cells: 'cell',
  days: 'day',
  times: 'time',
  feeds: 'feed',
  samples: 'sample',
  nights: 'night',
}

/** Units as they stand behind a number; those that a room may convert are converted in `quantities`. */
export const unitLabels = {
  mL: 'mL',
  L: 'L',
  g: 'g',
  per_mL: 'per mL',
  per_L: 'per L',
  animals: 'animals',
  eggs: 'eggs',
  cells: 'cells',
  cells_per_mL: 'cells per mL',
  cells_per_rotifer_per_day: 'cells a rotifer a day',
  degC: '°C',
  psu: 'psu',
  mg_per_L: 'mg/L',
  pH: 'pH',
  mV: 'mV',
  cm: 'cm',
  lux: 'lux',
  minutes: 'min',
  hours: 'h',
  days: 'days',
  per_day: 'a day',
  share: '%',
  times: 'times',
  feeds: 'feeds',
  samples: 'samples',
  nights: 'nights',
  um: 'µm',
  mm: 'mm',
} as const satisfies Record<Unit, string>
