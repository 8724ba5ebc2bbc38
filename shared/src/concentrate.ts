import * as z from 'zod/mini'
import { IdSchema, NameSchema, PlainDateSchema, VersionSchema } from './primitives.ts'
import { numberBetween, withDefault } from './shapes.ts'

/** Cells per mL as printed on the bottle; a millilitre cannot hold more than about 1e12 cells. from memory */
export const CellsPerMlSchema = numberBetween(1e6, 1e12).register(z.globalRegistry, {
  description: 'cells per mL, from the label',
})

const concentrateFields = {
  name: NameSchema,
  cellsPerMl: CellsPerMlSchema,
  openedOn: withDefault(z.nullable(PlainDateSchema), null),
  useBy: withDefault(z.nullable(PlainDateSchema), null),
}
/** A bottle of microalgae concentrate; its strength has no default. */
export const ConcentrateSchema = z
  .object({ id: IdSchema, ...concentrateFields, isFinished: z.boolean(), version: VersionSchema })
  .register(z.globalRegistry, { id: 'Concentrate' })
export type Concentrate = z.infer<typeof ConcentrateSchema>
export const NewConcentrateSchema = z.strictObject(concentrateFields)
export type NewConcentrate = z.infer<typeof NewConcentrateSchema>
export const ChangeConcentrateSchema = z.strictObject({
  name: z.optional(concentrateFields.name),
  cellsPerMl: z.optional(CellsPerMlSchema),
  openedOn: z.optional(z.nullable(PlainDateSchema)),
  useBy: z.optional(z.nullable(PlainDateSchema)),
  isFinished: z.optional(z.boolean()),
  version: VersionSchema,
})
