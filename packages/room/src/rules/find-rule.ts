import { type Rule, rules } from '@fryward/husbandry'
import { RoomError } from '../errors.ts'

const byId = new Map(rules.map((rule) => [rule.id, rule]))

export function findRule(ruleId: string): Rule {
  const rule = byId.get(ruleId)
  if (!rule) throw new RoomError('not_found', `There is no rule "${ruleId}"; see the list of rules.`)
  return rule
}
