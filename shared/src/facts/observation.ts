import * as z from 'zod/mini'
import { DeformedSchema, NoteSchema } from '../primitives.ts'
import { atMost, withDefault } from '../shapes.ts'
import { eggStages, signs } from '../vocabulary.ts'

export const ObservationDataSchema = z
  .strictObject({
    signs: withDefault(z.array(z.enum(signs)).check(atMost(20)), []),
    eggStage: z.optional(z.enum(eggStages)),
    deformed: z.optional(DeformedSchema),
    note: z.optional(NoteSchema),
  })
  .check(
    z.refine(
      ({ signs: seen, eggStage, deformed, note }) =>
        seen.length > 0 || eggStage !== undefined || deformed !== undefined || (note ?? '') !== '',
      'a sign, an egg colour, a number of deformed or a note',
    ),
  )
