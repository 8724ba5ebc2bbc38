import type { CountData, CultureKind, FactKind, Id } from '@fryward/shared'
import type { FactOf } from './fact.ts'

/** One line of a book of animals: a life begins with so many, some come, some leave, or they are counted. */
export type BookLine = {
  /** Whose book it is: a clutch, a batch, a group. */
  subjectId: Id
  way: 'begin' | 'in' | 'out' | 'count'
  /** Null where a life began and nobody has said with how many. */
  number: number | null
  /** What a count counted; a book listens to counts of its own animals only. */
  of?: CountData['of']
}

/** A sampled density with its interval, and the eggs a female where somebody looked. */
export type CountedDensity = {
  densityPerMl: number
  lowerPerMl: number
  upperPerMl: number
  animalsCounted: number
  eggRatio: number | null
  /** Looked at for eggs; null when nobody did. */
  females: number | null
}

/** What a fact does to how dense a culture is. */
export type CultureEffect =
  | ({ way: 'counted' } & CountedDensity)
  | { way: 'added'; densityPerMl: number }
  | { way: 'removed'; volumeL: number; fraction: number }
  | { way: 'restarted' }

export type CultureVessel = { kind: CultureKind; volumeL: number }

/**
 * What one kind of fact does to the state of the room. What is left out it leaves as it was: rules may still read that
 * it happened, and when.
 */
export type FactEffects<K extends FactKind> = {
  book?: (fact: FactOf<K>) => BookLine[]
  /** Litres that its subject's water falls by; under nothing when it rises. */
  waterFallsL?: (fact: FactOf<K>) => number
  culture?: (fact: FactOf<K>, vessel: CultureVessel) => CultureEffect | null
  /** What becomes of the clutch that it is about. */
  clutchIs?: 'laid' | 'hatched' | 'moved'
}
