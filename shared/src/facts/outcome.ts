import * as z from 'zod/mini'
import { NoteSchema } from '../primitives.ts'
import { aboveZero, trimmedText, wholeBetween } from '../shapes.ts'
import { outcomes } from '../vocabulary.ts'
import { BeyondBookSchema } from './beyond-book.ts'

/** What is told of fish that go to somebody else. */
const placing = {
  /** Total length of most of them. */
  lengthMm: z.optional(aboveZero(500)),
  eatsDryFood: z.optional(z.boolean()),
  /** Unfed for a day before they were packed, so that the water of the bag stays clean. common practice */
  wasUnfedADay: z.optional(z.boolean()),
  /** By role, or in free words. */
  toWhom: z.optional(trimmedText({ longest: 200 })),
}

/** Fish that were placed, kept for breeding or culled: they leave the group and are counted, not lost. */
export const OutcomeDataSchema = z
  .strictObject({
    outcome: z.enum(outcomes),
    number: wholeBetween(1, 1_000_000),
    ...placing,
    note: z.optional(NoteSchema),
    beyondBook: BeyondBookSchema,
  })
  .check(
    z.refine(
      ({ outcome, toWhom, wasUnfedADay }) =>
        outcome === 'placed' || (toWhom === undefined && wasUnfedADay === undefined),
      { path: ['outcome'], message: 'placed, where it is said to whom they went and that they were unfed' },
    ),
  )
