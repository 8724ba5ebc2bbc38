import type { Id, Task, TaskField } from '@fryward/shared'
import {
  askWhich,
  readTyped,
  sayNumber,
  toFieldUnit,
  toTyped,
  typedNumber,
  typeNumber,
  type UnitVoice,
} from '@fryward/words'
import type { Sampled } from '@/parts/counting/Samples.tsx'

/** What has been typed into one field, as typed; the wire's value is read from it only at sign-off. */
export type CountDraft = Sampled & { kind: 'count' }
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

const startOf = (field: TaskField, voice: UnitVoice): FieldDraft => {
  if (field.type === 'choices') return { kind: 'choices', values: [] }
  if (field.type === 'yes_no') return { kind: 'yes_no', value: undefined }
  if (field.type === 'count')
    return {
      kind: 'count',
      animals: Array.from({ length: Math.max(1, field.replicates) }, () => ''),
      volumeMl: toTyped(field.volumeMl, 'mL', voice),
      dilution: '1',
      eggs: '',
      females: '',
    }
  if (field.type === 'parts') {
    const litres = toFieldUnit('L', voice.units)
    return {
      kind: 'parts',
      parts: field.suggested.map((part, id) => ({
        id,
        to: part.to,
        subjectId: part.subjectId,
        name: part.name,
        litres: typeNumber(Number(litres.toShown(part.volumeL).toPrecision(3)), voice),
      })),
    }
  }
  return { kind: 'text', text: '' }
}

export const startDrafts = (task: Task, voice: UnitVoice): Drafts =>
  Object.fromEntries(task.fields.map((field) => [field.name, startOf(field, voice)]))

type NumberField = Extract<TaskField, { type: 'number' }>
type CountField = Extract<TaskField, { type: 'count' }>
type PartsField = Extract<TaskField, { type: 'parts' }>

/** Reads a field's draft into what the API takes, in the wire's units. */
export function readField(field: TaskField, draft: FieldDraft, voice: UnitVoice): FieldReading {
  if (field.type === 'number' && draft.kind === 'text') return readNumber(field, draft.text, voice)
  if (field.type === 'count' && draft.kind === 'count') return readCount(field, draft, voice)
  if (field.type === 'parts' && draft.kind === 'parts') return readParts(field, draft.parts, voice)
  if (draft.kind === 'choices') return draft.values.length > 0 ? { is: 'value', value: draft.values } : { is: 'empty' }
  if (draft.kind === 'yes_no') return draft.value === undefined ? { is: 'empty' } : { is: 'value', value: draft.value }
  if (draft.kind === 'text') {
    const text = draft.text.trim()
    return text === '' ? { is: 'empty' } : { is: 'value', value: text }
  }
  return { is: 'empty' }
}

const rangeText = (field: NumberField | CountField, voice: UnitVoice) => {
  const unit = toFieldUnit(field.unit, voice.units)
  return `${sayNumber(unit.toShown(field.minimum), voice)} to ${sayNumber(unit.toShown(field.maximum), voice)} ${unit.label}`.trim()
}

const improbableText = (field: NumberField | CountField, value: number, voice: UnitVoice): string | undefined => {
  if (value >= field.likelyMinimum && value <= field.likelyMaximum) return undefined
  const unit = toFieldUnit(field.unit, voice.units)
  // Bounds are rough: two digits say enough, and "80.7" would pretend to more.
  const bound = (of: number) => sayNumber(Number(unit.toShown(of).toPrecision(2)), voice)
  const likely = `${bound(field.likelyMinimum)} to ${bound(field.likelyMaximum)}`
  return `${`${field.label}: ${sayNumber(unit.toShown(value), voice)} ${unit.label}`.trim()}. Likely here: ${likely}.`
}

function readNumber(field: NumberField, text: string, voice: UnitVoice): FieldReading {
  const read = readTyped(text, field.unit, voice)
  if (read.is === 'empty') return { is: 'empty' }
  if (read.is === 'unclear') return { is: 'wrong', message: `${text}: ${askWhich(text, voice)}` }
  if (read.is !== 'number') return { is: 'wrong', message: `A number, ${rangeText(field, voice)}.` }
  const { value } = read
  if (value < field.minimum || value > field.maximum)
    return { is: 'wrong', message: `From ${rangeText(field, voice)}.` }
  const improbable = improbableText(field, value, voice)
  return improbable ? { is: 'value', value, improbable } : { is: 'value', value }
}

const wholeFrom = (text: string, voice: UnitVoice): number | undefined => {
  const value = typedNumber(text, null, voice)
  return value !== undefined && Number.isInteger(value) && value >= 0 ? value : undefined
}

/** Heads are counted one by one; everything else in a sampled volume. */
export const isHeadCount = (field: CountField): boolean => field.unit === 'animals' || field.unit === 'eggs'

/** Animals per mL of the vessel, or heads, from what is typed so far; undefined while it cannot be said. */
export function estimateOf(field: CountField, draft: CountDraft, voice: UnitVoice): number | undefined {
  const animals = draft.animals.map((text) => wholeFrom(text, voice)).filter((one) => one !== undefined)
  const mean = animals.reduce((sum, one) => sum + one, 0) / animals.length
  if (animals.length === 0) return undefined
  if (isHeadCount(field)) return mean
  const volumeMl = typedNumber(draft.volumeMl, null, voice)
  const dilution = typedNumber(draft.dilution, null, voice)
  if (!volumeMl || !dilution) return undefined
  const perMl = (mean * dilution) / volumeMl
  return field.unit === 'per_L' ? perMl * 1000 : perMl
}

function readCount(field: CountField, draft: CountDraft, voice: UnitVoice): FieldReading {
  const typed = draft.animals.filter((text) => text.trim() !== '')
  if (typed.length === 0) return { is: 'empty' }
  const animals = typed.map((text) => wholeFrom(text, voice)).filter((one) => one !== undefined)
  if (animals.length < typed.length) return { is: 'wrong', message: 'Whole numbers, one for each sample.' }
  const [eggs, females] = [wholeFrom(draft.eggs, voice), wholeFrom(draft.females, voice)]
  if ((draft.eggs.trim() !== '' && eggs === undefined) || (draft.females.trim() !== '' && females === undefined))
    return { is: 'wrong', message: 'Eggs and animals looked at, as whole numbers.' }
  if (eggs !== undefined && !females) return { is: 'wrong', message: 'How many animals the eggs were on.' }
  const estimate = estimateOf(field, draft, voice)
  if (estimate === undefined) return { is: 'wrong', message: 'The volume of one sample in mL, more than 0.' }
  if (estimate < field.minimum || estimate > field.maximum)
    return { is: 'wrong', message: `That makes ${sayNumber(estimate, voice)}. From ${rangeText(field, voice)}.` }
  const value = {
    animals,
    ...(isHeadCount(field) ? {} : { volumeMl: typedNumber(draft.volumeMl, null, voice) }),
    dilution: typedNumber(draft.dilution, null, voice) ?? 1,
    ...(eggs === undefined ? {} : { eggs, females }),
  }
  const improbable = improbableText(field, estimate, voice)
  return improbable ? { is: 'value', value, improbable } : { is: 'value', value }
}

function readParts(field: PartsField, drafts: PartDraft[], voice: UnitVoice): FieldReading {
  const litres = toFieldUnit('L', voice.units)
  const filled = drafts.filter((part) => part.litres.trim() !== '' && typedNumber(part.litres, null, voice) !== 0)
  if (filled.length === 0) return { is: 'empty' }
  const parts = filled.flatMap((part) => {
    const typed = typedNumber(part.litres, null, voice)
    if (typed === undefined || typed < 0) return []
    const volumeL = Number(litres.toWire(typed).toFixed(3))
    return [
      part.subjectId === undefined ? { to: part.to, volumeL } : { to: part.to, subjectId: part.subjectId, volumeL },
    ]
  })
  if (parts.length < filled.length) return { is: 'wrong', message: `A number of ${litres.label} for each destination.` }
  const totalL = parts.reduce((sum, part) => sum + part.volumeL, 0)
  const say = (valueL: number) => `${sayNumber(litres.toShown(valueL), voice)} ${litres.label}`
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
