import * as z from 'zod/mini'
import { IdSchema, InstantSchema, SubjectRefSchema } from './primitives.ts'
import { alarmKinds } from './vocabulary.ts'

/** What may explain a bend in a gauge's line; where several fall on one spot, the first of these is drawn. */
export const markKinds = ['alarm', 'hatch', 'water_change', 'harvest'] as const

/** Something that happened in a vessel, for the charts of its gauges. */
export const MarkSchema = z
  .object({
    kind: z.enum(markKinds),
    at: InstantSchema,
    /** The vessel, or the eggs or larvae in it. */
    subject: SubjectRefSchema,
    /** Of an alarm alone: what it was, and of which gauge. */
    alarm: z.nullable(z.object({ kind: z.enum(alarmKinds), gaugeId: IdSchema })),
  })
  .register(z.globalRegistry, { id: 'Mark' })
export type Mark = z.infer<typeof MarkSchema>
