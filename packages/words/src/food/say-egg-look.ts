import type { EggLookLack } from '@fryward/shared'

/** Why eggs that float are not looked for, and what would change it. */
const lacks = {
  larval_tank: {
    why: 'Every larval tank holds larvae, or is wanted for eggs that are to be raised.',
    until: 'a larval tank is emptied or added',
  },
  grow_out: {
    why: 'The larvae that are here already will want all the room that grow-out has.',
    until: 'fish leave grow-out or it gets another tank',
  },
  nauplii: {
    why: 'The copepods, as they were last counted, would not feed one more tank of small larvae.',
    until: 'a count of the copepods finds nauplii enough',
  },
} as const satisfies Record<EggLookLack, { why: string; until: string }>

export const notLookedFor = 'Eggs are not looked for now'

/** What a room lacks for floating eggs, and what would have them looked for again. */
export const sayEggLookLacks = (lacking: readonly EggLookLack[]): { why: string; until: string } => ({
  why: lacking.map((lack) => lacks[lack].why).join(' '),
  until: `They are looked for again ${lacking.map((lack) => `once ${lacks[lack].until}`).join(', and ')}.`,
})
