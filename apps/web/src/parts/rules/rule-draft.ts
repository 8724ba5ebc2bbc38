import type { ChangeRule, Rule, RuleParameter, UnitSystem } from '@fryward/shared'
import { parseNumber } from '@/base/quantities/format-number.ts'
import { toFieldUnit } from '@/base/quantities/room-units.ts'

export type ParameterDrafts = Record<string, string | boolean>

const toText = (parameter: RuleParameter, system: UnitSystem): string | boolean => {
  if (typeof parameter.value === 'boolean') return parameter.value
  if (typeof parameter.value === 'string') return parameter.value
  return String(Number(toFieldUnit(parameter.unit, system).toShown(parameter.value).toPrecision(6)))
}

export const startParameters = (rule: Rule, system: UnitSystem): ParameterDrafts =>
  Object.fromEntries(rule.parameters.map((one) => [one.name, toText(one, system)]))

type Reading = { body: ChangeRule; errors: Record<string, string> }

/** The typed numbers in the wire's units, only where they differ from the default. */
export function readRule(rule: Rule, isOn: boolean, drafts: ParameterDrafts, system: UnitSystem): Reading {
  const errors: Record<string, string> = {}
  const parameters: ChangeRule['parameters'] = {}
  for (const one of rule.parameters) {
    const draft = drafts[one.name]
    if (one.type !== 'number' || typeof draft !== 'string') {
      if (draft !== undefined && draft !== one.default) parameters[one.name] = draft
      continue
    }
    const unit = toFieldUnit(one.unit, system)
    const typed = parseNumber(draft)
    const value = draft === toText(one, system) ? one.value : typed === undefined ? undefined : unit.toWire(typed)
    const isOut =
      typeof value !== 'number' ||
      (one.minimum !== null && value < one.minimum) ||
      (one.maximum !== null && value > one.maximum)
    if (isOut) errors[one.name] = `${one.label}: ${sayRange(one, unit.toShown)} ${unit.label}`.trim()
    else if (value !== one.default) parameters[one.name] = value
  }
  return { body: { isOn, parameters, version: rule.version }, errors }
}

const sayRange = (parameter: RuleParameter, toShown: (value: number) => number): string => {
  const show = (value: number) => String(Number(toShown(value).toPrecision(4)))
  if (parameter.minimum !== null && parameter.maximum !== null)
    return `${show(parameter.minimum)} to ${show(parameter.maximum)}`
  if (parameter.minimum !== null) return `${show(parameter.minimum)} or more`
  if (parameter.maximum !== null) return `up to ${show(parameter.maximum)}`
  return 'a number'
}
