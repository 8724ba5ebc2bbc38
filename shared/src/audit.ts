import * as z from 'zod/mini'
import { IdSchema, InstantSchema, maximumInteger } from './primitives.ts'
import { wholeInAddress, withDefault } from './shapes.ts'
import { subjectKinds } from './vocabulary.ts'

/** What happened, in the order of the room's revision; also the live event of the same number. */
export const AuditEntrySchema = z
  .object({
    revision: z.int(),
    at: InstantSchema,
    actor: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('person'), userId: z.string(), name: z.string() }),
      z.object({ kind: z.literal('system'), job: z.string() }),
    ]),
    /** Verb and thing, such as task.sign_off or fact.strike. */
    action: z.string(),
    subjectId: z.nullable(IdSchema),
    subjectKind: z.nullable(z.enum(subjectKinds)),
    detail: z.record(z.string(), z.unknown()),
  })
  .register(z.globalRegistry, { id: 'AuditEntry' })
export type AuditEntry = z.infer<typeof AuditEntrySchema>
export const AuditPageSchema = z
  .object({ entries: z.array(AuditEntrySchema), nextBefore: z.nullable(z.int()) })
  .register(z.globalRegistry, { id: 'AuditPage' })
export const AuditQuerySchema = z.strictObject({
  before: z.optional(wholeInAddress(1, maximumInteger)),
  limit: withDefault(wholeInAddress(1, 200), 50),
})

/** One server-sent event: `id` is the revision, so a phone resumes with Last-Event-ID. */
export const RoomEventSchema = z.object({
  revision: z.int(),
  actions: z.array(z.string()),
  byName: z.nullable(z.string()),
  subjectIds: z.array(IdSchema),
})
export type RoomEvent = z.infer<typeof RoomEventSchema>
