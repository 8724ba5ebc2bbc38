import type { PhotoLook, PlainDate } from '@fryward/shared'
import { dayMonth } from '../calendar/day-month.ts'
import { findSpecies } from '../species/index.ts'

/** How the young of a tank are spoken of, and what is looked for in them. */
export type YoungWords = {
  name: 'larvae' | 'young'
  dead: string
  inIt: string
  bornOn: string
  /** Full bellies, how they swim, what is wrong with some. */
  look: readonly string[]
  looks: readonly PhotoLook[]
  /** Whether somebody has to see them settle. */
  settle: boolean
  deformed: string
}

// Bars appear and larvae settle: Roux et al. 2019, Dev. Dyn. 248:545-568 (from memory).
const larvae: YoungWords = {
  ...{ name: 'larvae', dead: 'Dead larvae', inIt: 'Larvae in it now', bornOn: 'hatched the night of' },
  look: [
    'A cup of them against the light: full bellies are round and silvery or green.',
    'Schooling into the current, or lying, spinning, gulping at the surface?',
    'Bars showing, settling on walls and bottom? Bent backs, short gill covers?',
  ],
  looks: ['full_bellies', 'hungry_larvae', 'settled_larvae', 'deformed_larvae'],
  settle: true,
  deformed: 'Bent back, short gill covers, a fin missing.',
}

const young = {
  ...({ name: 'young', dead: 'Dead young', inIt: 'Young in it now', bornOn: 'released the night of' } as const),
  looks: ['full_bellies', 'hungry_larvae', 'deformed_larvae'],
  settle: false,
} satisfies Partial<YoungWords>
const orange = 'Against the light, in the water: full bellies are round, and orange from nauplii.'

// Small fish from the first day. common practice
const fromMouth: YoungWords = {
  ...young,
  look: [
    orange,
    'Together near what they hide in, or lying, spinning, gulping at the surface?',
    'Bent backs, short gill covers, fins missing?',
  ],
  deformed: 'Bent back, short gill covers, a fin missing.',
}

// They drift for some weeks and hold on by their tails then (H. kuda: Choo & Liew 2006, J. Fish Biol. 69:426-445, abstract). Air
// that they swallow at the surface keeps them there: common practice.
const fromPouch: YoungWords = {
  ...young,
  look: [
    orange,
    'Upright, striking at food, holding on by the tail once some weeks old? Or afloat on a bubble in belly or pouch, lying, spinning?',
    'Bent tails or backs, short snouts?',
  ],
  deformed: 'Bent tail or back, a short snout.',
}

/** Larvae that have still to settle, or young that a mouth or a pouch let go as small fish. */
export function youngWords({ species }: { species: string }): YoungWords {
  const profile = findSpecies(species)
  if (profile?.larvalDuration !== null) return larvae
  return profile.care.value === 'pouch' ? fromPouch : fromMouth
}

/** What a batch is called that nobody has named. */
export const batchName = ({ species, hatchedOn }: { species: string; hatchedOn: PlainDate }): string =>
  `${youngWords({ species }).name === 'young' ? 'Young' : 'Larvae'}, ${dayMonth(hatchedOn)}`
