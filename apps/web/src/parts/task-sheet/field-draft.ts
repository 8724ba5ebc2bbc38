import type { Id, Task, TaskField, UnitSystem } from '@fryward/shared'
import { formatNumber, parseNumber } from '@/base/quantities/format-number.ts'
import { toFieldUnit } from '@/base/quantities/room-units.ts'

/** What has been typed into one field, as typed; the wire's value is read from it only at sign-off. */
export type CountDraft = {
  kind: 'count'
  animals: string[]
  volumeMl: string
  dilution: string
  eggs: string
  females: string
}
export type PartDraft = { id: number; to: string; subjectId: Id | undefined; name: string; litres: string }
export type FieldDraft =
  | { kind: 'text'; text: string }
  | { kind: 'choices'; values: string[] }
  | { kind: 'yes_no'; value: boolean | undefined }
  | CountDraft
  | { kind: 'parts'; parts: PartDraft[] }
export type Drafts = Record<string, FieldDraft>

/** The value to send, or what is wrong with it; an improbable one is sent once it is confirmed. */
export type FieldReading =
  | { is: 'value'; value: unknown; improbable?: string }
  | { is: 'empty' }
  | { is: 'wrong'; message: string }

const startOf = (field: TaskField, system: UnitSystem): FieldDraft => {
  if (field.type === 'choices') return { kind: 'choices', values: [] }
  if (field.type === 'yes_no') return { kind: 'yes_no', value: undefined }
  if (field.type === 'count')
    return {
      kind: 'count',
      animals: Array.from({ length: Math.max(1, field.replicates) }, () => ''),
      volumeMl: String(field.volumeMl),
      dilution: '1',
      eggs: '',
      females: '',
    }
  if (field.type === 'parts') {
    const litres = toFieldUnit('L', system)
    return {
      kind: 'parts',
      parts: field.suggested.map((part, id) => ({
        id,
        to: part.to,
        subjectId: part.subjectId,
        name: part.name,
        litres: String(Number(litres.toShown(part.volumeL).toPrecision(3))),
      })),
    }
  }
  return { kind: 'text', text: '' }
}

export const startDrafts = (task: Task, system: UnitSystem): Drafts =>
  Object.fromEntries(task.fields.map((field) => [field.name, startOf(field, system)]))

type NumberField = Extract<TaskField, { type: 'number' }>
type CountField = Extract<TaskField, { type: 'count' }>
type PartsField = Extract<TaskField, { type: 'parts' }>

/** Reads a field's draft into what the API takes, in the wire's units. */
export function readField(field: TaskField, draft: FieldDraft, system: UnitSystem): FieldReading {
  if (field.type === 'number' && draft.kind === 'text') return readNumber(field, draft.text, system)
  if (field.type === 'count' && draft.kind === 'count') return readCount(field, draft, system)
  if (field.type === 'parts' && draft.kind === 'parts') return readParts(field, draft.parts, system)
  if (draft.kind === 'choices') return draft.values.length > 0 ? { is: 'value', value: draft.values } : { is: 'empty' }
  if (draft.kind === 'yes_no') return draft.value === undefined ? { is: 'empty' } : { is: 'value', value: draft.value }
  if (draft.kind === 'text') {
    const text = draft.text.trim()
    return text === '' ? { is: 'empty' } : { is: 'value', value: text }
  }
  return { is: 'empty' }
}

const rangeText = (field: NumberField | CountField, system: UnitSystem) => {
  const unit = toFieldUnit(field.unit, system)
  return `${formatNumber(unit.toShown(field.minimum))} to ${formatNumber(unit.toShown(field.maximum))} ${unit.label}`.trim()
}

const improbableText = (field: NumberField | CountField, value: number, system: UnitSystem): string | undefined => {
  if (value >= field.likelyMinimum && value <= field.likelyMaximum) return undefined
  const unit = toFieldUnit(field.unit, system)
  // Bounds are rough: two digits say enough, and "80.7" would pretend to more.
  const bound = (of: number) => formatNumber(Number(unit.toShown(of).toPrecision(2)))
  const likely = `${bound(field.likelyMinimum)} to ${bound(field.likelyMaximum)}`
  return `${`${field.label}: ${formatNumber(unit.toShown(value))} ${unit.label}`.trim()}. Likely here: ${likely}.`
}

function readNumber(field: NumberField, text: string, system: UnitSystem): FieldReading {
  if (text.trim() === '') return { is: 'empty' }
  const typed = parseNumber(text)
  if (typed === undefined) return { is: 'wrong', message: `A number, ${rangeText(field, system)}.` }
  const value = toFieldUnit(field.unit, system).toWire(typed)
  if (value < field.minimum || value > field.maximum)
    return { is: 'wrong', message: `From ${rangeText(field, system)}.` }
  const improbable = improbableText(field, value, system)
  return improbable ? { is: 'value', value, improbable } : { is: 'value', value }
}

const wholeFrom = (text: string): number | undefined => {
  const value = parseNumber(text)
  return value !== undefined && Number.isInteger(value) && value >= 0 ? value : undefined
}

/** Heads are counted one by one; everything else in a sampled volume. */
export const isHeadCount = (field: CountField): boolean => field.unit === 'animals' || field.unit === 'eggs'

/** Animals per mL of the vessel, or heads, from what is typed so far; undefined while it cannot be said. */
export function estimateOf(field: CountField, draft: CountDraft): number | undefined {
  const animals = draft.animals.map(wholeFrom).filter((one) => one !== undefined)
  const mean = animals.reduce((sum, one) => sum + one, 0) / animals.length
  if (animals.length === 0) return undefined
  if (isHeadCount(field)) return mean
  const volumeMl = parseNumber(draft.volumeMl)
  const dilution = parseNumber(draft.dilution)
  if (!volumeMl || !dilution) return undefined
  const perMl = (mean * dilution) / volumeMl
  return field.unit === 'per_L' ? perMl * 1000 : perMl
}

function readCount(field: CountField, draft: CountDraft, system: UnitSystem): FieldReading {
  const typed = draft.animals.filter((text) => text.trim() !== '')
  if (typed.length === 0) return { is: 'empty' }
  const animals = typed.map(wholeFrom).filter((one) => one !== undefined)
  if (animals.length < typed.length) return { is: 'wrong', message: 'Whole numbers, one for each sample.' }
  const [eggs, females] = [wholeFrom(draft.eggs), wholeFrom(draft.females)]
  if ((draft.eggs.trim() !== '' && eggs === undefined) || (draft.females.trim() !== '' && females === undefined))
    return { is: 'wrong', message: 'Eggs and animals looked at, as whole numbers.' }
  if (eggs !== undefined && !females) return { is: 'wrong', message: 'How many animals the eggs were on.' }
  const estimate = estimateOf(field, draft)
  if (estimate === undefined) return { is: 'wrong', message: 'The volume of one sample in mL, more than 0.' }
  if (estimate < field.minimum || estimate > field.maximum)
    return { is: 'wrong', message: `That makes ${formatNumber(estimate)}. From ${rangeText(field, system)}.` }
  const value = {
    animals,
    ...(isHeadCount(field) ? {} : { volumeMl: parseNumber(draft.volumeMl) }),
    dilution: parseNumber(draft.dilution) ?? 1,
    ...(eggs === undefined ? {} : { eggs, females }),
  }
  const improbable = improbableText(field, estimate, system)
  return improbable ? { is: 'value', value, improbable } : { is: 'value', value }
}

function readParts(field: PartsField, drafts: PartDraft[], system: UnitSystem): FieldReading {
  const litres = toFieldUnit('L', system)
  const filled = drafts.filter((part) => part.litres.trim() !== '' && parseNumber(part.litres) !== 0)
  if (filled.length === 0) return { is: 'empty' }
  const parts = filled.flatMap((part) => {
    const typed = parseNumber(part.litres)
    if (typed === undefined || typed < 0) return []
    const volumeL = Number(litres.toWire(typed).toFixed(3))
    return [
      part.subjectId === undefined ? { to: part.to, volumeL } : { to: part.to, subjectId: part.subjectId, volumeL },
    ]
  })
  if (parts.length < filled.length) return { is: 'wrong', message: `A number of ${litres.label} for each destination.` }
  const totalL = parts.reduce((sum, part) => sum + part.volumeL, 0)
  const say = (valueL: number) => `${formatNumber(litres.toShown(valueL))} ${litres.label}`
  if (totalL > field.maximumL)
    return { is: 'wrong', message: `${say(totalL)} together; at most ${say(field.maximumL)}.` }
  return totalL > field.likelyMaximumL
    ? {
        is: 'value',
        value: parts,
        improbable: `${say(totalL)} together. Most days at most ${say(field.likelyMaximumL)}.`,
      }
    : { is: 'value', value: parts }
}
