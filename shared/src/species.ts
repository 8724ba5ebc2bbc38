import * as z from 'zod/mini'
import { mostEggDays } from './other-species.ts'
import { SpeciesIdSchema } from './pair.ts'
import { trimmedText, wholeBetween } from './shapes.ts'
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

/** What a room says of a species that no profile describes; all of it goes into its id. */
export const ChangeOtherSpeciesSchema = z.strictObject({
  name: trimmedText({ shortest: 3, longest: 50, wanted: 'a scientific name such as Synchiropus splendidus' }),
  /** From eggs to hatch, or until the young are out of a mouth or pouch; null where nobody knows. */
  eggDays: z.nullable(wholeBetween(1, mostEggDays)),
  care: z.enum(careKinds),
})
export type ChangeOtherSpecies = z.infer<typeof ChangeOtherSpeciesSchema>
/** The id that stands for it from now on, wherever the old one stood. */
export const ChangedSpeciesSchema = z
  .object({ species: SpeciesIdSchema })
  .register(z.globalRegistry, { id: 'ChangedSpecies' })
export type ChangedSpecies = z.infer<typeof ChangedSpeciesSchema>
