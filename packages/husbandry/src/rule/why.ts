import type { Because, Id, Instant } from '@fryward/shared'
import type { Fact } from '../facts/fact.ts'
import type { RuleDefinition } from './definition.ts'
import { sourceText } from './parameters.ts'

/** A link of "why" that names one of a rule's parameters with its source. */
export function parameterLink(rule: Pick<RuleDefinition, 'id' | 'parameters'>, values: Record<string, unknown>) {
  return (name: string, joins: Because['joins'] = null): Because => {
    const parameter = rule.parameters[name]
    if (!parameter) throw new Error(`Rule ${rule.id} has no parameter ${name}`)
    const value = values[name]
    const isNumber = parameter.type === 'number'
    return {
      label: parameter.label,
      quantity: isNumber && parameter.unit ? { value: Number(value), unit: parameter.unit } : null,
      text: isNumber && parameter.unit ? null : String(value),
      joins,
      origin: {
        kind: 'parameter',
        ruleId: rule.id,
        parameter: name,
        source: sourceText(parameter.source),
        isChanged: value !== parameter.default,
      },
    }
  }
}

/** A link of "why" that was read from a fact. */
export function factLink(fact: Fact, link: Pick<Because, 'label'> & Partial<Because>): Because {
  return {
    quantity: null,
    text: null,
    joins: null,
    ...link,
    origin: { kind: 'fact', factId: fact.id, subjectId: fact.subjectId, at: fact.at, byName: fact.recordedByName },
  }
}

export function settingLink(
  subjectId: Id | null,
  where: string,
  link: Pick<Because, 'label'> & Partial<Because>,
): Because {
  return { quantity: null, text: null, joins: null, ...link, origin: { kind: 'setting', subjectId, where } }
}

export function computedLink(
  by: string,
  source: string | null,
  link: Pick<Because, 'label'> & Partial<Because>,
): Because {
  return { quantity: null, text: null, joins: 'equals', ...link, origin: { kind: 'computed', by, source } }
}

/** A link of "why" that the plan of the food says. */
export function planLink(madeAt: Instant, link: Pick<Because, 'label'> & Partial<Because>): Because {
  return { quantity: null, text: null, joins: 'and', ...link, origin: { kind: 'food_plan', madeAt } }
}

export function profileLink(species: string, source: string, link: Pick<Because, 'label'> & Partial<Because>): Because {
  return { quantity: null, text: null, joins: null, ...link, origin: { kind: 'profile', species, source } }
}
