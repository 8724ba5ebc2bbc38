import * as z from 'zod/mini'
import { PhraseSchema, PlainDateSchema, PlainTimeSchema, QuantitySchema } from './primitives.ts'

/**
 * What a task's title says is done. Each is one pattern of a sentence in packages/words, which fills in the amount, the
 * thing, where it comes from and where it goes.
 */
export const deeds = [
  'brush',
  'check',
  'clean',
  'count',
  'decapsulate',
  'decide_clutch',
  'discard',
  'discard_amount',
  'disinfect',
  'enrich',
  'feed',
  'fill',
  'fill_to_mark',
  'give',
  'give_from',
  'give_rest',
  'harvest',
  'harvest_from',
  'keep',
  'keep_dark',
  'look_at',
  'look_for',
  'look_over',
  'move',
  'order',
  'pinch',
  'pull',
  'ready',
  'remove',
  'replace',
  'restart',
  'restart_all',
  'restart_crashed',
  'restart_part',
  'see_to',
  'siphon',
  'start',
  'swirl',
  'take_out',
  'test',
  'turn_over',
  'use_up',
  'watch',
  'watch_for',
  'what_hatched',
  'what_hatched_second',
  'what_released',
  'what_released_second',
] as const
export type Deed = (typeof deeds)[number]

/** Where what is taken goes: a vessel of the room by its name, or one of the ways that have none. */
export const TitleDestinationSchema = z.union([
  z.object({ name: z.string() }),
  z.object({ way: z.enum(['other_fish', 'chilled_reserve', 'drain']) }),
])
export type TitleDestination = z.infer<typeof TitleDestinationSchema>

/** What a title adds behind the deed, in order. */
export const TitleDetailSchema = z.discriminatedUnion('kind', [
  /** Which of the day's feeds this is. */
  z.object({ kind: z.literal('feed'), number: z.int(), of: z.int() }),
  /** Days since laying, hatching or pairing. */
  z.object({ kind: z.literal('day'), day: z.int() }),
  z.object({ kind: z.literal('age'), days: z.int() }),
  /** A second amount: "640 g salt". */
  z.object({ kind: z.literal('amount'), quantity: QuantitySchema, of: z.string() }),
  z.object({ kind: z.literal('for_feeds_of'), date: PlainDateSchema }),
  z.object({ kind: z.literal('use_by'), date: PlainDateSchema }),
  z.object({ kind: z.literal('to_come_on'), date: PlainDateSchema }),
  z.object({ kind: z.literal('tonight'), probability: z.number() }),
  z.object({ kind: z.literal('hours'), from: PlainTimeSchema, to: PlainTimeSchema }),
  /** What is seen, or why this is asked for. */
  z.object({ kind: z.literal('because'), words: z.array(z.string()) }),
  /** Another thing done with it: "walls brushed", "new water in". */
  z.object({ kind: z.literal('with'), words: z.string() }),
])
export type TitleDetail = z.infer<typeof TitleDetailSchema>

/** What a task says on its line, in parts: a screen, a mail or a calendar puts them into words. */
export const TitleSchema = z.object({
  deed: z.enum(deeds),
  /** The number to measure out, where the title says it. */
  amount: z.nullable(QuantitySchema),
  /** In the trade's words, or by its name: "new water", "the walls", "Nannochloropsis". */
  thing: z.nullable(z.string()),
  /** The vessel that it is taken from, where that is not the task's own. */
  from: z.nullable(z.string()),
  to: z.array(TitleDestinationSchema),
  details: z.array(TitleDetailSchema),
})
export type Title = z.infer<typeof TitleSchema>

/** Tasks that were kept before titles had parts say theirs as one sentence. */
export const TaskTitleSchema = z.union([TitleSchema, PhraseSchema])
export type TaskTitle = z.infer<typeof TaskTitleSchema>
