import * as z from 'zod/mini'
import { IdSchema, InstantSchema, maximumInteger, SubjectRefSchema } from './primitives.ts'
import { trimmedText, wholeBetween, withDefault } from './shapes.ts'
import { TaskTitleSchema } from './title.ts'
import { careKinds, lossTargets, taskStates } from './vocabulary.ts'

export const HandOverNoteSchema = z
  .object({
    id: IdSchema,
    at: InstantSchema,
    byName: z.string(),
    text: z.string(),
    isWorry: z.boolean(),
    subject: z.nullable(SubjectRefSchema),
    settledAt: z.nullable(InstantSchema),
    settledByName: z.nullable(z.string()),
  })
  .register(z.globalRegistry, { id: 'HandOverNote' })
export type HandOverNote = z.infer<typeof HandOverNoteSchema>

export const NewHandOverNoteSchema = z.strictObject({
  text: trimmedText({ shortest: 1, longest: 2000, wanted: 'a note of at least one letter' }),
  /** A worry stays on the page until somebody settles it. */
  isWorry: withDefault(z.boolean(), false),
  subjectId: z.optional(IdSchema),
})

/** What one caretaker needs to know from the others. */
export const HandOverSchema = z
  .object({
    /** Null when the person has never looked. */
    lastLookedAt: z.nullable(InstantSchema),
    sinceRevision: z.int(),
    revision: z.int(),
    /** What was written since then, by person: how many sign-offs, skips, records, changes. */
    since: z.array(
      z.object({
        byName: z.string(),
        signedOff: z.int(),
        skipped: z.int(),
        recorded: z.int(),
        changed: z.int(),
      }),
    ),
    /** Not done: late now, skipped or missed since yesterday morning. */
    notDone: z.array(
      z.object({
        taskId: IdSchema,
        title: TaskTitleSchema,
        subject: SubjectRefSchema,
        state: z.enum(taskStates),
        isLate: z.boolean(),
        dueAt: InstantSchema,
        reason: z.nullable(z.string()),
        byName: z.nullable(z.string()),
      }),
    ),
    worries: z.array(HandOverNoteSchema),
    notes: z.array(HandOverNoteSchema),
    /** Signs of trouble recorded in the last two days. */
    signs: z.array(
      z.object({
        factId: IdSchema,
        at: InstantSchema,
        byName: z.string(),
        subject: SubjectRefSchema,
        signs: z.array(z.string()),
        note: z.nullable(z.string()),
      }),
    ),
    /** Animals that were found dead in the last two days, thing by thing, most first. */
    losses: z.array(
      z.object({
        subject: SubjectRefSchema,
        of: z.enum(lossTargets),
        /** How the eggs of larvae were kept; null of everything else. */
        care: z.nullable(z.enum(careKinds)),
        number: z.int(),
        at: InstantSchema,
        byName: z.string(),
      }),
    ),
    /** Clutches that may hatch or be released in the coming nights, the likeliest first. */
    coming: z.array(
      z.object({ subject: SubjectRefSchema, care: z.enum(careKinds), date: z.string(), probability: z.number() }),
    ),
  })
  .register(z.globalRegistry, { id: 'HandOver' })
export type HandOver = z.infer<typeof HandOverSchema>

export const LookedSchema = z.strictObject({ revision: wholeBetween(0, maximumInteger) })
