import type { TaskField, Unit } from '@fryward/shared'
import { given, numberOf, type Values } from './values.ts'

type FieldBase = { name: string; label: string; isRequired?: boolean; help?: string | null }
const base = ({ name, label, isRequired = false, help = null }: FieldBase) => ({ name, label, isRequired, help })

/** A number to record; outside `likely` it asks for a confirmation, outside `minimum`..`maximum` it is refused. */
export function numberField(
  input: FieldBase & {
    unit: Unit | null
    minimum: number
    maximum: number
    likely: readonly [number, number]
    usual?: number | null
    step?: number
  },
): TaskField {
  const { unit, minimum, maximum, likely, usual = null, step = 1 } = input
  const [likelyMinimum, likelyMaximum] = likely
  return { type: 'number', ...base(input), unit, minimum, maximum, likelyMinimum, likelyMaximum, usual, step }
}

/** What was really given, when it was not the planned amount: from nearly nothing to three times as much is likely. */
export function givenAmountField(input: {
  name: string
  label: string
  unit: Unit
  planned: number
  maximum: number
  step: number
}): TaskField {
  const { planned, step } = input
  return numberField({
    ...input,
    help: 'Leave empty when it was the planned amount.',
    minimum: Math.min(step, planned),
    maximum: Math.max(input.maximum, planned),
    likely: [planned / 3, planned * 3],
    usual: planned,
  })
}

/** A sampled count: three replicates of 1 mL unless said otherwise (Pfeiffer & Ludwig 2002, WAS abstract p. 264). */
export function countField(
  input: FieldBase & {
    unit: 'per_mL' | null
    maximum: number
    likely: readonly [number, number]
    usual?: number | null
    volumeMl?: number
    replicates?: number
    withEggs?: boolean
  },
): TaskField {
  const { unit, maximum, likely, usual = null, volumeMl = 1, replicates = 3, withEggs = false } = input
  return {
    type: 'count',
    ...base(input),
    unit,
    minimum: 0,
    maximum,
    likelyMinimum: likely[0],
    likelyMaximum: likely[1],
    usual,
    volumeMl,
    replicates,
    withEggs,
  }
}

type Choice = { value: string; label: string }
export function choiceField(input: FieldBase & { choices: Choice[] }): TaskField {
  return { type: 'choice', ...base(input), choices: input.choices }
}
export function choicesField(input: FieldBase & { choices: Choice[] }): TaskField {
  return { type: 'choices', ...base(input), choices: input.choices }
}
export function yesNoField(input: FieldBase): TaskField {
  return { type: 'yes_no', ...base(input) }
}
export function textField(input: FieldBase): TaskField {
  return { type: 'text', ...base(input) }
}
export function noteField(label = 'Anything worth a note'): TaskField {
  return textField({ name: 'note', label })
}
/** What is measured has no usual value to tap: it is read and typed. `expected` says only what is likely. */
export function temperatureField(expected: number, isRequired = false): TaskField {
  return numberField({
    name: 'temperatureC',
    label: 'Temperature',
    isRequired,
    unit: 'degC',
    minimum: 0,
    maximum: 40,
    likely: [expected - 3, expected + 3],
    step: 0.1,
  })
}
export function salinityField(expected: number, isRequired = false): TaskField {
  return numberField({
    name: 'salinity',
    label: 'Salinity',
    isRequired,
    unit: 'psu',
    minimum: 0,
    maximum: 45,
    likely: [Math.max(0, expected - 3), expected + 3],
    step: 0.5,
  })
}

/** Young fish with bent backs, short gill covers or a fin missing, as a number. */
export function deformedField(
  help = 'Bent back, short gill covers, a fin missing.',
  label = 'Deformed among them',
): TaskField {
  return numberField({
    ...{ name: 'deformed', label, help },
    ...{ unit: 'animals', minimum: 0, maximum: 100_000, likely: [0, 30] },
  })
}

/** What was seen of young fish beside their number, as it stands in a fact. */
export function seenOfYoung(values: Values): { lengthMm?: number; deformed?: number } {
  const [lengthMm, deformed] = [numberOf(values, 'lengthMm'), numberOf(values, 'deformed')]
  return given({ lengthMm, deformed: deformed === undefined ? undefined : Math.round(deformed) })
}

/** Length of young fish, where somebody holds some to a ruler; what is usual at their age says only what is likely. */
export function lengthField(usual: { from: number; to: number }): TaskField {
  return numberField({
    name: 'lengthMm',
    label: 'Length of the middle one',
    help: 'Of five held to a ruler, nose to tail. Leave empty when none was measured.',
    unit: 'mm',
    minimum: 1,
    maximum: 300,
    likely: [usual.from * 0.8, usual.to * 1.2],
    step: 1,
  })
}
