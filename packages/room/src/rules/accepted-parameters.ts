import { parameterSchema, type Rule } from '@fryward/husbandry'
import { type ChangeRule, wantedInstead } from '@fryward/shared'
import { RoomError } from '../errors.ts'

/** A rule's parameters as a room may set them; what equals the default is not kept as a change. */
export function acceptedParameters(rule: Rule, parameters: ChangeRule['parameters']): ChangeRule['parameters'] {
  const parsed = parameterSchema(rule.parameters).safeParse(parameters, { error: wantedInstead })
  if (!parsed.success)
    throw new RoomError('invalid_input', `Rule "${rule.title}" cannot be set so; see the fields.`, {
      fields: parsed.error.issues.map((issue) => ({
        path: `parameters.${issue.path.join('.')}`,
        message: `${labelOf(rule, issue.path[0])}: give ${issue.message}.`,
      })),
    })
  return Object.fromEntries(
    Object.entries(parameters).filter(([name, value]) => rule.parameters[name]?.default !== value),
  )
}

const labelOf = (rule: Rule, name: PropertyKey | undefined): string =>
  typeof name === 'string' ? (rule.parameters[name]?.label ?? name) : 'parameters'
