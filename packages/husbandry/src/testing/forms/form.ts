import type { SnapshotBuilder } from '../snapshot-builder.ts'

/** A field as `saidField` says it, and why it is so: what is kept, or what was worked out by hand. */
export type Line = readonly [field: string, why: string]

/** What a rule asks of one thing, as its first task of the day. */
export type Form = { rule: string; of: string; ask: () => SnapshotBuilder; on?: string; fields: readonly Line[] }

export const note: Line = ['note: words', 'whatever has no field']

export const cultureSigns: Line = [
  'signs: any of swimming_slow, sinking, clumping, foam, bad_smell, ciliates',
  'what is seen first of a culture that dies comes first',
]

export const fishSigns: Line = ['signs: any of not_eating, fighting, gasping, spots_or_wounds', 'the commonest first']

export const deformed: Line = [
  'deformed: 0 to 100000 animals, likely 0 to 30, by 1',
  'a few in a hundred of reared clownfish; more than thirty is a sick brood or a slip',
]

export const taken: Line = ['taken: one of none, some, all', 'the fewest first; nobody need have watched']

/** Salinity and warmth of water, as far as three either way of what is set; practical salinity is kept to 45 and water to 40 C. */
export const waterOf = (salinity: number, temperatureC: number): Line[] => [
  [`salinity: 0 to 45 psu, likely ${salinity - 3} to ${salinity + 3}, by 0.5`, 'to half a mark of a refractometer'],
  [
    `temperatureC: 0 to 40 degC, likely ${temperatureC - 3} to ${temperatureC + 3}, by 0.1`,
    'as a thermometer shows it',
  ],
]

export const doneAboutIt: Line = ['did: one of nothing, thinned, restarted', 'the least first']
export const waterLook: Line = ['water: one of water_green, water_tinted, water_clear', 'the fullest first']
