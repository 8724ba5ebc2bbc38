import type { FactKind, factDataSchemas, Id, Instant } from '@fryward/shared'
import type { z } from 'zod'

/** What happened, as far as rules read it: what, to whom, when, who says so. A standing fact; none is struck out. */
export type FactOf<K extends FactKind> = {
  id: Id
  kind: K
  subjectId: Id
  at: Instant
  recordedByName: string
  /** The task whose sign-off wrote it; null when it was written down without one. */
  taskId: Id | null
  data: z.output<(typeof factDataSchemas)[K]>
}
export type Fact = { [K in FactKind]: FactOf<K> }[FactKind]

/** A fact as rules write it down, before the room has dated it. */
export type FactDraft = {
  [K in FactKind]: { kind: K; subjectId: Id; data: z.input<(typeof factDataSchemas)[K]> }
}[FactKind]
