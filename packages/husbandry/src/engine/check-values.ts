import {
  type CountValue,
  CountValueSchema,
  type FieldProblem,
  HarvestPartSchema,
  type TaskField,
} from '@fryward/shared'
import { z } from 'zod'

export type CheckedValues = { values: Record<string, unknown>; problems: FieldProblem[]; improbable: FieldProblem[] }

/**
 * Holds what was typed against what a task asks for. `problems` are refused; `improbable` values ask for a
 * confirmation (the field's name in `confirmed`).
 */
export function checkValues({
  fields,
  values,
  confirmed,
}: {
  fields: readonly TaskField[]
  values: Record<string, unknown>
  confirmed: readonly string[]
}): CheckedValues {
  const result: CheckedValues = { values: {}, problems: [], improbable: [] }
  const known = new Set(fields.map((field) => field.name))
  for (const name of Object.keys(values)) {
    if (!known.has(name))
      result.problems.push({
        path: `values.${name}`,
        message: `This task records ${[...known].join(', ') || 'nothing'}; "${name}" is not one of them.`,
      })
  }
  for (const field of fields) {
    const value = values[field.name]
    if (value === undefined || value === null || value === '') {
      if (field.isRequired) result.problems.push({ path: `values.${field.name}`, message: `${field.label} is needed.` })
      continue
    }
    const parsed = z.safeParse(schemaOf(field), value)
    if (!parsed.success) {
      result.problems.push({
        path: `values.${field.name}`,
        message: `${field.label}: ${parsed.error.issues.map((issue) => issue.message).join('; ')}`,
        received: value,
      })
      continue
    }
    result.values[field.name] = parsed.data
    const doubt = doubtOf(field, parsed.data)
    if (doubt && !confirmed.includes(field.name))
      result.improbable.push({ path: `values.${field.name}`, message: doubt, received: value })
  }
  return result
}

function schemaOf(field: TaskField): z.core.$ZodType {
  switch (field.type) {
    case 'number':
      return z.number().min(field.minimum, `at least ${field.minimum}`).max(field.maximum, `at most ${field.maximum}`)
    case 'count':
      return CountValueSchema.check(
        z.refine((count) => count.volumeMl !== undefined, 'the volume counted in mL is needed'),
        z.refine((count) => densityPerMl(count) <= field.maximum, `at most ${field.maximum} per mL`),
      )
    case 'choice':
      return z.enum(field.choices.map((choice) => choice.value) as [string, ...string[]])
    case 'choices':
      return z
        .array(z.enum(field.choices.map((choice) => choice.value) as [string, ...string[]]))
        .max(field.choices.length)
    case 'yes_no':
      return z.boolean()
    case 'text':
      return z.string().trim().max(2000)
    case 'parts':
      return z
        .array(HarvestPartSchema)
        .max(20)
        .refine((parts) => litresOf(parts) <= field.maximumL + 1e-9, `at most ${field.maximumL} L in all`)
  }
}

function doubtOf(field: TaskField, value: unknown): string | null {
  if (field.type === 'number' || field.type === 'count') {
    const number = field.type === 'number' ? z.number().parse(value) : densityPerMl(CountValueSchema.parse(value))
    if (number >= field.likelyMinimum && number <= field.likelyMaximum) return null
    const shown = Math.round(number * 100) / 100
    return `${field.label}: ${shown} is outside the usual ${field.likelyMinimum} to ${field.likelyMaximum}. Is it right?`
  }
  if (field.type === 'parts') {
    const litres = litresOf(z.array(HarvestPartSchema).parse(value))
    if (litres > field.likelyMaximumL + 1e-9)
      return `${field.label}: ${litres} L is more than the usual ${field.likelyMaximumL} L. Is it right?`
  }
  return null
}

const litresOf = (parts: { volumeL: number }[]) => parts.reduce((sum, part) => sum + part.volumeL, 0)

function densityPerMl(count: CountValue): number {
  const animals = count.animals.reduce((sum, each) => sum + each, 0)
  return (animals / (count.animals.length * (count.volumeMl ?? 1))) * (count.dilution ?? 1)
}
