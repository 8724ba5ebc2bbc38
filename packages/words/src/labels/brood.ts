import { type CareKind, type ClutchState, isBrooder } from '@fryward/shared'
import { careLabels, clutchStateLabels } from './things.ts'

/** How young are spoken of, from their eggs on, and how they come: one place for every page. */
export type BroodWords = {
  /** One of them, and many. */
  one: string
  many: string
  /** What their number of today is called. */
  now: string
  /** What was laid, where its number stands; and since when it is there. */
  eggs: string
  since: string
  out: string
  /** "the hatch", as an event; and the night of it. */
  coming: string
  night: string
  record: string
}

const hatched = {
  one: 'larva',
  many: 'larvae',
  now: 'Larvae now',
  eggs: 'Eggs',
  since: 'Laid',
  out: 'Hatched',
  coming: 'hatch',
  night: 'Hatch night',
  record: 'It hatched: record the larvae',
} as const satisfies BroodWords

// A parent that carries is seen, and what it carries is not: nobody sees it hatch in there.
const released = {
  one: 'young',
  many: 'young',
  now: 'Young now',
  eggs: 'Brood',
  since: 'Carried since',
  out: 'Released',
  coming: 'release',
  night: 'Night of release',
  record: 'They are out: record the young',
} as const satisfies BroodWords

export const isCarried = (care: CareKind | undefined): boolean => care !== undefined && isBrooder(care)

/** By where the eggs are; larvae of a nest where nobody knows. */
export const broodWords = (care: CareKind | undefined): BroodWords => (isCarried(care) ? released : hatched)

/** What a night may bring. */
export const sayMayCome = (care: CareKind): string => (isCarried(care) ? 'may be released' : 'may hatch')

/** Of several clutches together: "the hatch", "the release", "the hatch or release" where some are carried and some are not. */
export const sayComing = (cares: readonly CareKind[]): string => ofAll(cares, 'coming')
/** "hatched", "released", "hatched or released". */
export const sayOut = (cares: readonly CareKind[]): string => ofAll(cares, 'out').toLowerCase()

function ofAll(cares: readonly CareKind[], word: 'coming' | 'out'): string {
  const all = new Set(cares.map((care) => broodWords(care)[word]))
  return [hatched[word], released[word]].filter((one) => all.has(one)).join(' or ') || hatched[word]
}

/** What became of a clutch; while it has not come, where it is. */
export function sayClutchState({ state, care }: { state: ClutchState; care: CareKind }): string {
  if (state === 'hatched') return broodWords(care).out
  if (state !== 'incubating' || care === 'nest') return clutchStateLabels[state]
  return `${isCarried(care) ? 'Carried' : 'Eggs'} ${careLabels[care]}`
}
