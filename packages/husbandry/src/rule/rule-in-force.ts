import { settingOf } from '../snapshot/live-snapshot.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import type { RuleDefinition } from './definition.ts'
import { type Parameters, type ParameterValues, resolveParameters } from './parameters.ts'

export type RuleInForce<P extends Parameters> = { isOn: boolean; parameters: ParameterValues<P> }

/** How a room runs a rule: whether it is on, and its parameters as the room has set them. */
export function ruleInForce<P extends Parameters>(
  snapshot: Pick<RoomSnapshot, 'ruleSettings'>,
  { id, isOnByDefault, parameters }: Pick<RuleDefinition<P>, 'id' | 'isOnByDefault' | 'parameters'>,
): RuleInForce<P> {
  const setting = settingOf(snapshot, id)
  return {
    isOn: setting?.isOn ?? isOnByDefault,
    parameters: resolveParameters(parameters, setting?.parameters ?? {}),
  }
}
