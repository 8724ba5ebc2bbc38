import type { FactDraft } from '../../facts/fact.ts'
import { seenOfYoung } from '../../task/fields.ts'
import { numberOf, textOf, type Values } from '../../task/values.ts'

/** Young that were counted one by one: how many, what was seen of them, and a note beside it. */
export function headCountFacts(subjectId: string, of: 'larvae' | 'juveniles', values: Values): FactDraft[] {
  const number = Math.round(numberOf(values, 'number') ?? 0)
  const note = textOf(values, 'note')
  return [
    { kind: 'count', subjectId, data: { of, animals: [number], ...seenOfYoung(values) } },
    ...(note ? [{ kind: 'observation' as const, subjectId, data: { note } }] : []),
  ]
}
