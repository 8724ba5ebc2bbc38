import * as z from 'zod/mini'
import { IdSchema, InstantSchema, ReasonSchema } from '../primitives.ts'
import { wholeInAddress, withDefault } from '../shapes.ts'
import { type FactKind, factKinds, subjectKinds } from '../vocabulary.ts'
import { comesWithItsThing, factDataSchemas } from './kinds.ts'

const factBase = {
  id: IdSchema,
  subjectId: IdSchema,
  subjectKind: z.enum(subjectKinds),
  /** When it was done or seen. */
  at: InstantSchema,
  receivedAt: InstantSchema,
  recordedByName: z.string(),
  taskId: z.nullable(IdSchema),
  struckAt: z.nullable(InstantSchema),
  struckByName: z.nullable(z.string()),
  struckReason: z.nullable(z.string()),
  revision: z.int(),
}
const factOf = <K extends FactKind>(kind: K) =>
  z.object({ ...factBase, kind: z.literal(kind), data: factDataSchemas[kind] })

/** The same for each kind of a list, as the schemas that a union is made of. */
type EachOf<K extends FactKind, Made extends { [P in K]: unknown }> = [Made[K], ...Made[K][]]

export const FactSchema = z
  .discriminatedUnion(
    'kind',
    factKinds.map(factOf) as EachOf<FactKind, { [K in FactKind]: ReturnType<typeof factOf<K>> }>,
  )
  .register(z.globalRegistry, { id: 'Fact' })
export type Fact = z.infer<typeof FactSchema>
export type FactOf<K extends Fact['kind']> = Extract<Fact, { kind: K }>

const newFactOf = <K extends FactKind>(kind: K) =>
  z.strictObject({
    kind: z.literal(kind),
    subjectId: IdSchema,
    at: z.optional(InstantSchema),
    data: factDataSchemas[kind],
  })

type PostedKind = Exclude<FactKind, (typeof comesWithItsThing)[number]>
const isPosted = (kind: FactKind): kind is PostedKind => !(comesWithItsThing as readonly FactKind[]).includes(kind)

/** What a person posts. */
export const NewFactSchema = z.discriminatedUnion(
  'kind',
  factKinds.filter(isPosted).map(newFactOf) as EachOf<
    PostedKind,
    { [K in PostedKind]: ReturnType<typeof newFactOf<K>> }
  >,
)
export type NewFact = z.infer<typeof NewFactSchema>

export const StrikeFactSchema = z.strictObject({ reason: ReasonSchema })

export const FactQuerySchema = z.strictObject({
  subjectId: z.optional(IdSchema),
  kind: z.optional(z.enum(factKinds)),
  before: z.optional(InstantSchema),
  limit: withDefault(wholeInAddress(1, 500), 100),
})
export const FactPageSchema = z
  .object({ facts: z.array(FactSchema), nextBefore: z.nullable(InstantSchema) })
  .register(z.globalRegistry, { id: 'FactPage' })
