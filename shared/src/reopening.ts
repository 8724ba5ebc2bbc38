import * as z from 'zod/mini'
import { IdSchema, VersionSchema } from './primitives.ts'
import { subjectKinds } from './vocabulary.ts'

/** Takes back the end of a thing, as somebody saw it. */
export const ReopenSchema = z.strictObject({ version: VersionSchema })

export const ReopenedThingSchema = z
  .object({ id: IdSchema, kind: z.enum(subjectKinds), name: z.string(), version: VersionSchema })
  .register(z.globalRegistry, { id: 'ReopenedThing' })
export type ReopenedThing = z.infer<typeof ReopenedThingSchema>
