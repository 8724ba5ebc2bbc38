import { type Mark, markKinds } from '@fryward/shared'

export type MarkGroup = { x: number; kind: Mark['kind']; marks: Mark[] }

// A sign is as wide as that; two that would touch are one.
const signWidth = 16

/** Marks that fall on one spot of a chart, under the sign of the one that matters most. */
export function markGroups(marks: readonly Mark[], x: (at: string) => number): MarkGroup[] {
  const groups: MarkGroup[] = []
  for (const mark of marks) {
    const last = groups.at(-1)
    const at = x(mark.at)
    if (last && at - last.x < signWidth) last.marks.push(mark)
    else groups.push({ x: at, kind: mark.kind, marks: [mark] })
  }
  return groups.map((group) => ({
    ...group,
    kind: markKinds.find((kind) => group.marks.some((mark) => mark.kind === kind)) ?? group.kind,
  }))
}
