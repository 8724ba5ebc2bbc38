import type { NewFact } from '@fryward/shared'
import type { Thing } from '@/parts/things/use-things.ts'

/** What a set of fields has to say: the fact's kind and data, or a sentence about what is missing. */
export type FactDraft =
  | { kind: NewFact['kind']; data: unknown }
  | { kind: 'spawning'; eggs: number | undefined }
  | string
export type FieldsProps = { subject: Thing; onDraft: (draft: FactDraft) => void }
