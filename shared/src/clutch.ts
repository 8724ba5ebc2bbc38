import * as z from 'zod/mini'
import { HeadCountSchema, IdSchema, InstantSchema, NameSchema, PlainDateSchema, VersionSchema } from './primitives.ts'
import { withDefault } from './shapes.ts'
import { careKinds, clutchIntents, clutchStates } from './vocabulary.ts'

export const ClutchIntentSchema = z.enum(clutchIntents)

/** How likely hatching is on one night; the night belongs to the date its lights went off. */
export const NightSchema = z.object({ date: PlainDateSchema, probability: z.number() })
export type Night = z.infer<typeof NightSchema>

/** State, intent, nights and numbers are worked out from the facts; only the name is kept. */
export const ClutchSchema = z
  .object({
    id: IdSchema,
    name: NameSchema,
    pairId: IdSchema,
    tankId: IdSchema,
    species: z.string(),
    care: z.enum(careKinds),
    intent: ClutchIntentSchema,
    state: z.enum(clutchStates),
    spawnedAt: InstantSchema,
    eggs: z.nullable(z.int()),
    ageDays: z.number(),
    nights: z.array(NightSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'Clutch' })
export type Clutch = z.infer<typeof ClutchSchema>

export const NewClutchSchema = z.strictObject({
  pairId: IdSchema,
  name: z.optional(NameSchema),
  spawnedAt: InstantSchema,
  eggs: z.optional(HeadCountSchema),
  intent: withDefault(ClutchIntentSchema, 'undecided'),
})
export type NewClutch = z.infer<typeof NewClutchSchema>
export const ChangeClutchSchema = z.strictObject({
  name: z.optional(NameSchema),
  intent: z.optional(ClutchIntentSchema),
  version: VersionSchema,
})
