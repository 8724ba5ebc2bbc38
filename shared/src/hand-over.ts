import { z } from 'zod'
import { IdSchema, InstantSchema, maximumInteger, PhraseSchema } from './primitives.ts'
import { subjectKinds, taskStates } from './vocabulary.ts'

export const SubjectRefSchema = z.object({ id: IdSchema, kind: z.enum(subjectKinds), name: z.string() })

export const HandOverNoteSchema = z
  .object({
    id: IdSchema,
    at: InstantSchema,
    byName: z.string(),
    text: z.string(),
    isWorry: z.boolean(),
    subject: SubjectRefSchema.nullable(),
    settledAt: InstantSchema.nullable(),
    settledByName: z.string().nullable(),
  })
  .meta({ id: 'HandOverNote' })
export type HandOverNote = z.infer<typeof HandOverNoteSchema>

export const NewHandOverNoteSchema = z.strictObject({
  text: z.string().trim().min(1, 'a note of at least one letter').max(2000),
  /** A worry stays on the page until somebody settles it. */
  isWorry: z.boolean().default(false),
  subjectId: IdSchema.optional(),
})

/** What one caretaker needs to know from the others. */
export const HandOverSchema = z
  .object({
    /** Null when the person has never looked. */
    lastLookedAt: InstantSchema.nullable(),
    sinceRevision: z.number().int(),
    revision: z.number().int(),
    /** What was written since then, by person: how many sign-offs, skips, records, changes. */
    since: z.array(
      z.object({
        byName: z.string(),
        signedOff: z.number().int(),
        skipped: z.number().int(),
        recorded: z.number().int(),
        changed: z.number().int(),
      }),
    ),
    /** Not done: late now, skipped or missed since yesterday morning. */
    notDone: z.array(
      z.object({
        taskId: IdSchema,
        title: PhraseSchema,
        subject: SubjectRefSchema,
        state: z.enum(taskStates),
        isLate: z.boolean(),
        dueAt: InstantSchema,
        reason: z.string().nullable(),
        byName: z.string().nullable(),
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
        note: z.string().nullable(),
      }),
    ),
    /** Clutches that may hatch in the coming nights, the likeliest first. */
    coming: z.array(z.object({ subject: SubjectRefSchema, date: z.string(), probability: z.number() })),
  })
  .meta({ id: 'HandOver' })
export type HandOver = z.infer<typeof HandOverSchema>

export const LookedSchema = z.strictObject({ revision: z.number().int().min(0).max(maximumInteger) })
