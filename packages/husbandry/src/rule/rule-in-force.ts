import { settingOf } from '../snapshot/live-snapshot.ts'
import type { RoomSnapshot, RuleSetting } from '../snapshot/room-snapshot.ts'
import type { RuleDefinition } from './definition.ts'
import { type Parameters, type ParameterValues, resolveParameters } from './parameters.ts'

export type RuleInForce<P extends Parameters> = { isOn: boolean; parameters: ParameterValues<P> }

/** How a room runs a rule: whether it is on, and its parameters as the room has set them. */
export function ruleInForce<P extends Parameters>(
  snapshot: Pick<RoomSnapshot, 'ruleSettings'>,
  { id, isOnByDefault, parameters }: Pick<RuleDefinition<P>, 'id' | 'isOnByDefault' | 'parameters'>,
): RuleInForce<P> {
  const setting = settingOf(snapshot, id)
  return { isOn: setting?.isOn ?? isOnByDefault, parameters: parametersInForce(parameters, setting) }
}

const byDefault: Pick<RuleSetting, 'parameters'> = { parameters: {} }
const resolved = new WeakMap<Parameters, WeakMap<object, unknown>>()

/** Worked out once for each setting: rules ask for each other's parameters thousands of times a day. */
function parametersInForce<P extends Parameters>(
  parameters: P,
  { parameters: changes } = byDefault,
): ParameterValues<P> {
  const byChanges = resolved.get(parameters) ?? new WeakMap<object, unknown>()
  resolved.set(parameters, byChanges)
  const known = byChanges.get(changes)
  if (known) return known as ParameterValues<P>
  const values = Object.freeze(resolveParameters(parameters, changes))
  byChanges.set(changes, values)
  return values
}
