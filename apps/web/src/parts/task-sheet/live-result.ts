import type { Task, TaskField } from '@fryward/shared'
import { sayNumber, toFieldUnit, typedNumber, type UnitVoice, unitLabels } from '@fryward/words'
import { type Drafts, estimateOf, type FieldDraft } from './field-draft.ts'

/** What the values typed so far make; undefined for fields that make nothing. */
function resultOf(field: TaskField, draft: FieldDraft | undefined, voice: UnitVoice): string | undefined {
  if (field.type === 'count' && draft?.kind === 'count') {
    const estimate = estimateOf(field, draft, voice)
    if (estimate === undefined) return 'Count, and this says what it makes.'
    return `Makes ${sayNumber(estimate, voice)} ${field.unit ? unitLabels[field.unit] : ''}`.trim()
  }
  if (field.type === 'parts' && draft?.kind === 'parts') {
    const total = draft.parts.reduce((sum, part) => sum + (typedNumber(part.litres, null, voice) ?? 0), 0)
    return `${sayNumber(total, voice)} ${toFieldUnit('L', voice.units).label} together`
  }
  return undefined
}

/** One line for each field that makes something, with its name where there are several. */
export function liveResults(task: Task, drafts: Drafts, voice: UnitVoice): string[] {
  const results = task.fields.flatMap((field) => {
    const result = resultOf(field, drafts[field.name], voice)
    return result === undefined ? [] : [{ label: field.label, result }]
  })
  return results.map(({ label, result }) => (results.length > 1 ? `${label}: ${result}` : result))
}
