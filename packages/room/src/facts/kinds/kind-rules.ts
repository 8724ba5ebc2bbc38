import type { FactDraft } from '@fryward/husbandry'
import type { FactKind, Id, SubjectKind } from '@fryward/shared'
import { invalid } from '../../errors.ts'
import { findCard } from '../../frame/directory.ts'
import type { Work } from '../../frame/write-in-room.ts'

export type DraftOf<K extends FactKind> = Extract<FactDraft, { kind: K }>

/** What the room asks of one kind of fact, beside the schema of its data. */
export type KindRules<K extends FactKind> = {
  /** What it may be about. */
  about: readonly SubjectKind[]
  /** What only the room can tell: that named things exist, are of the right kind and are large enough. */
  assertFits?: (work: Work, fact: DraftOf<K>) => Promise<void>
  /** Its part in the books of animals; without one it is in none. */
  book?: {
    /** Animals leave its subject with it: more than the book holds is asked about. */
    departs?: true
    /** The field that names another thing whose book it is in too. */
    arrivesAt?: keyof DraftOf<K>['data'] & string
  }
  /** What keeping it changes besides the facts. */
  onKept?: (work: Work, fact: DraftOf<K>, subject: { id: Id; name: string }) => Promise<void>
}

/** A thing that a fact names is in the room, and of the kind it has to be. */
export async function assertNamed(work: Work, named: { id: Id; kind?: SubjectKind; path: string }): Promise<void> {
  const subject = await findCard(work, named.id)
  if (!subject || (named.kind && subject.kind !== named.kind))
    throw invalid(named.path, `There is no such ${words(named.kind ?? 'tank')} in this room.`, named.id)
}

export const words = (word: string): string => word.replaceAll('_', ' ')
