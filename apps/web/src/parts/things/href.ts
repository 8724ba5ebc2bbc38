import type { Id, SubjectKind } from '@fryward/shared'

const folders: Partial<Record<SubjectKind, string>> = {
  culture: 'cultures',
  tank: 'tanks',
  pair: 'pairs',
  clutch: 'clutches',
  larval_batch: 'batches',
  juvenile_group: 'groups',
}

/** The page of a thing of the room; undefined for kinds without one. */
export function hrefOf(roomId: Id, subject: { id: Id; kind: SubjectKind }): string | undefined {
  const folder = folders[subject.kind]
  return folder && `/rooms/${roomId}/${folder}/${subject.id}`
}
