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
  eatsFrozenFood: z.optional(z.boolean()),
  /** Unfed for a day before they were packed, so that the water of the bag stays clean. common practice */
  wasUnfedADay: z.optional(z.boolean()),
  /** By role, or in free words. */
  toWhom: z.optional(trimmedText({ longest: 200 })),
  /** As agreed, in free words, for there is no saying in which money: "12 each". */
  price: z.optional(trimmedText({ longest: 80 })),
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
      ({ outcome, toWhom, price, wasUnfedADay }) =>
        outcome === 'placed' || (toWhom === undefined && price === undefined && wasUnfedADay === undefined),
      {
        path: ['outcome'],
        message: 'placed, where it is said to whom they went, for how much, and that they were unfed',
      },
    ),
  )
