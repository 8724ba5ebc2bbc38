import type { RoomSnapshot } from '../snapshot.ts'
import { type Parameters, type ParameterValues, resolveParameters } from './parameters.ts'

export type RuleInForce<P extends Parameters> = { isOn: boolean; parameters: ParameterValues<P> }

/** How a room runs a rule, for another rule whose amounts depend on it. */
export function ruleInForce<P extends Parameters>(
  snapshot: RoomSnapshot,
  rule: { id: string; isOnByDefault: boolean; parameters: P },
): RuleInForce<P> {
  const setting = snapshot.ruleSettings[rule.id]
  return {
    isOn: setting?.isOn ?? rule.isOnByDefault,
    parameters: resolveParameters(rule.parameters, setting?.parameters ?? {}),
  }
}
