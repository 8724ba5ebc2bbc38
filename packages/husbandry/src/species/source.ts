import { z } from 'zod'

/** How sure a value is: printed in a publication, shared by the trade, recalled, or chosen by us. */
export const SourceKindSchema = z.enum(['published', 'common-practice', 'from-memory', 'assumption'])
export type SourceKind = z.infer<typeof SourceKindSchema>

export const SourceSchema = z.strictObject({ kind: SourceKindSchema, citation: z.string().min(1) })
export type Source = z.infer<typeof SourceSchema>

/** Schema of a value that cannot be separated from where it came from. */
export function sourced<Schema extends z.ZodType>(value: Schema) {
  return z.strictObject({ value, source: SourceSchema })
}

const withKind =
  (kind: SourceKind) =>
  <const Value>(value: Value, citation: string) => ({ value, source: { kind, citation } })

/** Printed in a publication, or plain arithmetic on what it prints (the citation says which). */
export const published = withKind('published')
/** What breeders do, without a publication behind it. */
export const commonPractice = withKind('common-practice')
/** Recalled, not checked against the publication. */
export const fromMemory = withKind('from-memory')
/** Chosen by us because nothing better is known; the citation says from what. */
export const assumption = withKind('assumption')
