import * as z from 'zod/mini'
import { IdSchema, PlainDateSchema } from './primitives.ts'
import { text, withDefault } from './shapes.ts'

/** What a room's records are exported as, a file each. */
export const recordFiles = ['counts', 'feedings', 'losses', 'clutches', 'tasks'] as const
export type RecordFile = (typeof recordFiles)[number]

/** Both days are taken in, by the room's own dates. With a comma as decimal mark the cells are parted by semicolons. */
export const RecordFileQuerySchema = z
  .strictObject({
    from: PlainDateSchema,
    to: PlainDateSchema,
    decimal: withDefault(z.enum(['point', 'comma']), 'point'),
  })
  .check(z.refine(({ from, to }) => from <= to, { path: ['to'], message: 'a date that is not before the first' }))
export type RecordFileQuery = z.infer<typeof RecordFileQuerySchema>

// Some two thousand lines of a notebook; a longer one goes in parts.
const longestFile = 120_000

/** Counts from a notebook as the text of a CSV file, its first line naming the columns. */
export const CountsFileSchema = z.strictObject({
  text: text({
    shortest: 1,
    longest: longestFile,
    wanted: 'the lines of a file, the first with the names of its columns',
  }),
})

/** What becomes of one line; `problem` says why it is left out, and what to do. */
export const ImportLineSchema = z.object({
  /** As in the file, its first line being 1. */
  line: z.int(),
  text: z.string(),
  /** Null where the thing cannot be told. */
  thing: z.nullable(z.string()),
  date: z.nullable(PlainDateSchema),
  problem: z.nullable(z.string()),
})
export type ImportLine = z.infer<typeof ImportLineSchema>

/** What becomes of them beside being kept, as a sentence. */
const NoteSchema = z.nullable(z.string())

export const ImportPreviewSchema = z
  .object({ lines: z.array(ImportLineSchema), good: z.int(), note: NoteSchema })
  .register(z.globalRegistry, { id: 'ImportPreview' })
export type ImportPreview = z.infer<typeof ImportPreviewSchema>

export const ImportedSchema = z
  .object({ id: IdSchema, kept: z.int(), lines: z.array(ImportLineSchema), note: NoteSchema })
  .register(z.globalRegistry, { id: 'Imported' })
export type Imported = z.infer<typeof ImportedSchema>
