import { z } from 'zod'
import { IdSchema, InstantSchema, maximumInteger } from './primitives.ts'
import { subjectKinds } from './vocabulary.ts'

/** What happened, in the order of the room's revision; also the live event of the same number. */
export const AuditEntrySchema = z
  .object({
    revision: z.number().int(),
    at: InstantSchema,
    actor: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('person'), userId: z.string(), name: z.string() }),
      z.object({ kind: z.literal('system'), job: z.string() }),
    ]),
    /** Verb and thing, such as task.sign_off or fact.strike. */
    action: z.string(),
    subjectId: IdSchema.nullable(),
    subjectKind: z.enum(subjectKinds).nullable(),
    detail: z.record(z.string(), z.unknown()),
  })
  .meta({ id: 'AuditEntry' })
export type AuditEntry = z.infer<typeof AuditEntrySchema>
export const AuditPageSchema = z
  .object({ entries: z.array(AuditEntrySchema), nextBefore: z.number().int().nullable() })
  .meta({ id: 'AuditPage' })
export const AuditQuerySchema = z.strictObject({
  before: z.coerce.number().int().min(1).max(maximumInteger).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
})

/** One server-sent event: `id` is the revision, so a phone resumes with Last-Event-ID. */
export const RoomEventSchema = z.object({
  revision: z.number().int(),
  actions: z.array(z.string()),
  byName: z.string().nullable(),
  subjectIds: z.array(IdSchema),
})
export type RoomEvent = z.infer<typeof RoomEventSchema>
