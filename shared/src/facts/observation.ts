import * as z from 'zod/mini'
import { NoteSchema } from '../primitives.ts'
import { atMost, withDefault } from '../shapes.ts'
import { eggStages, signs } from '../vocabulary.ts'

export const ObservationDataSchema = z
  .strictObject({
    signs: withDefault(z.array(z.enum(signs)).check(atMost(20)), []),
    eggStage: z.optional(z.enum(eggStages)),
    note: z.optional(NoteSchema),
  })
  .check(
    z.refine(
      (seen) => seen.signs.length > 0 || seen.eggStage !== undefined || (seen.note ?? '') !== '',
      'a sign, an egg colour or a note',
    ),
  )
