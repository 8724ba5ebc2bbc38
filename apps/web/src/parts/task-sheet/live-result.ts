import type { Task, TaskField, UnitSystem } from '@fryward/shared'
import { formatNumber, parseNumber } from '@/base/quantities/format-number.ts'
import { toFieldUnit } from '@/base/quantities/room-units.ts'
import { unitLabels } from '@/base/words/labels.ts'
import { type Drafts, estimateOf, type FieldDraft } from './field-draft.ts'

/** What the values typed so far make; undefined for fields that make nothing. */
function resultOf(field: TaskField, draft: FieldDraft | undefined, system: UnitSystem): string | undefined {
  if (field.type === 'count' && draft?.kind === 'count') {
    const estimate = estimateOf(field, draft)
    if (estimate === undefined) return 'Count, and this says what it makes.'
    return `Makes ${formatNumber(estimate)} ${field.unit ? unitLabels[field.unit] : ''}`.trim()
  }
  if (field.type === 'parts' && draft?.kind === 'parts') {
    const total = draft.parts.reduce((sum, part) => sum + (parseNumber(part.litres) ?? 0), 0)
    return `${formatNumber(total)} ${toFieldUnit('L', system).label} together`
  }
  return undefined
}

/** One line for each field that makes something, with its name where there are several. */
export function liveResults(task: Task, drafts: Drafts, system: UnitSystem): string[] {
  const results = task.fields.flatMap((field) => {
    const result = resultOf(field, drafts[field.name], system)
    return result === undefined ? [] : [{ label: field.label, result }]
  })
  return results.map(({ label, result }) => (results.length > 1 ? `${label}: ${result}` : result))
}
