import { type Rule as RuleDefinition, resolveParameters, rules } from '@fryward/husbandry'
import type { Id, Rule, RuleParameter } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { nameOf, userNames } from '../people/user-names.ts'

type RuleChangeRow = Prisma.RuleChangeGetPayload<object>

export async function listRulesInRoom({ tx, roomId }: { tx: Transaction; roomId: Id }): Promise<Rule[]> {
  const changes = await tx.ruleChange.findMany({
    where: { roomId },
    distinct: ['ruleId'],
    orderBy: [{ ruleId: 'asc' }, { version: 'desc' }],
  })
  const names = await userNames(
    tx,
    changes.map((change) => change.changedBy),
  )
  const byRule = new Map(changes.map((change) => [change.ruleId, change]))
  return rules.map((rule) => toRule(rule, byRule.get(rule.id), names))
}

function toRule(rule: RuleDefinition, change: RuleChangeRow | undefined, names: ReadonlyMap<string, string>): Rule {
  const values: Record<string, RuleParameter['value']> = resolveParameters(
    rule.parameters,
    (change?.parameters ?? {}) as Record<string, unknown>,
  )
  return {
    id: rule.id,
    title: rule.title,
    sentence: rule.sentence,
    subject: rule.subject,
    station: rule.station,
    isOn: change?.isOn ?? rule.isOnByDefault,
    isOnByDefault: rule.isOnByDefault,
    parameters: Object.entries(rule.parameters).map(
      ([name, parameter]): RuleParameter => ({
        name,
        label: parameter.label,
        type: parameter.type,
        unit: parameter.type === 'number' ? parameter.unit : null,
        minimum: parameter.type === 'number' ? parameter.minimum : null,
        maximum: parameter.type === 'number' ? parameter.maximum : null,
        choices: parameter.type === 'choice' ? [...parameter.choices] : null,
        default: parameter.default,
        value: values[name] ?? parameter.default,
        source: parameter.source,
      }),
    ),
    changedByName: change ? nameOf(names, change.changedBy) : null,
    changedAt: change?.changedAt.toISOString() ?? null,
    version: change?.version ?? 0,
  }
}
