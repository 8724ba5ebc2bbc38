import { z } from 'zod'
import { IdSchema, NameSchema, PlainDateSchema, VersionSchema } from './primitives.ts'

/** Cells per mL as printed on the bottle; a millilitre cannot hold more than about 1e12 cells. from memory */
export const CellsPerMlSchema = z.number().min(1e6).max(1e12).meta({ description: 'cells per mL, from the label' })

const concentrateFields = {
  name: NameSchema,
  cellsPerMl: CellsPerMlSchema,
  openedOn: PlainDateSchema.nullable().default(null),
  useBy: PlainDateSchema.nullable().default(null),
}
/** A bottle of microalgae concentrate; its strength has no default. */
export const ConcentrateSchema = z
  .object({ id: IdSchema, ...concentrateFields, isFinished: z.boolean(), version: VersionSchema })
  .meta({ id: 'Concentrate' })
export type Concentrate = z.infer<typeof ConcentrateSchema>
export const NewConcentrateSchema = z.strictObject(concentrateFields)
export type NewConcentrate = z.infer<typeof NewConcentrateSchema>
export const ChangeConcentrateSchema = z.strictObject({
  name: concentrateFields.name.optional(),
  cellsPerMl: CellsPerMlSchema.optional(),
  openedOn: PlainDateSchema.nullable().optional(),
  useBy: PlainDateSchema.nullable().optional(),
  isFinished: z.boolean().optional(),
  version: VersionSchema,
})
