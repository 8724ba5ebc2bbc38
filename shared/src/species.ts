import * as z from 'zod/mini'
import { SpeciesIdSchema } from './pair.ts'
import { careKinds } from './vocabulary.ts'

/** What a form needs to know of a species; the whole profile with its sources lives in the husbandry package. */
export const SpeciesSummarySchema = z
  .object({
    id: SpeciesIdSchema,
    scientificName: z.string(),
    commonName: z.string(),
    care: z.enum(careKinds),
    permitNote: z.nullable(z.string()),
  })
  .register(z.globalRegistry, { id: 'SpeciesSummary' })
export type SpeciesSummary = z.infer<typeof SpeciesSummarySchema>
