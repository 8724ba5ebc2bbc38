import type { Task, TaskField } from '@fryward/shared'

/** What a caretaker with nothing special to tell would fill in: a likely value in every required field. */
export function plausibleValues(task: Pick<Task, 'fields'>): Record<string, unknown> {
  return Object.fromEntries(
    task.fields.filter((field) => field.isRequired).map((field) => [field.name, plausibleValue(field)]),
  )
}

export function plausibleValue(field: TaskField): unknown {
  switch (field.type) {
    case 'number':
      // Where nothing may be found, nothing special is found.
      return field.usual ?? (field.likelyMinimum === 0 ? 0 : middle(field))
    case 'count':
      return countOf(field, field.usual ?? middle(field))
    case 'choice':
      return field.choices[0]?.value
    case 'choices':
      return field.choices.slice(0, 1).map((choice) => choice.value)
    case 'yes_no':
      return false
    case 'text':
      return 'nothing special'
    case 'parts':
      return field.suggested.map(({ to, subjectId, volumeL }) => ({
        to,
        volumeL,
        ...(subjectId ? { subjectId } : {}),
      }))
  }
}

/** A count of about so many animals per mL, as the field asks for it. */
export function countOf(field: Extract<TaskField, { type: 'count' }>, densityPerMl: number): object {
  const animals = Math.max(1, Math.round(densityPerMl * field.volumeMl))
  return {
    animals: Array<number>(field.replicates).fill(animals),
    volumeMl: field.volumeMl,
    ...(field.withEggs ? { eggs: Math.round(animals * 0.3), females: animals } : {}),
  }
}

const middle = ({ likelyMinimum, likelyMaximum }: { likelyMinimum: number; likelyMaximum: number }) =>
  Math.round((likelyMinimum + likelyMaximum) / 2)
