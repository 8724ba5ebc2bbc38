import type { ChangeRule, Rule, RuleParameter } from '@fryward/shared'
import { askWhich, readTyped, sayNumber, toFieldUnit, toTyped, type UnitVoice } from '@fryward/words'

export type ParameterDrafts = Record<string, string | boolean>

const toText = (parameter: RuleParameter, voice: UnitVoice): string | boolean => {
  if (typeof parameter.value === 'boolean') return parameter.value
  if (typeof parameter.value === 'string') return parameter.value
  return toTyped(parameter.value, parameter.unit, voice)
}

export const startParameters = (rule: Rule, voice: UnitVoice): ParameterDrafts =>
  Object.fromEntries(rule.parameters.map((one) => [one.name, toText(one, voice)]))

type Reading = { body: ChangeRule; errors: Record<string, string> }

/** The typed numbers in the wire's units, only where they differ from the default. */
export function readRule(rule: Rule, isOn: boolean, drafts: ParameterDrafts, voice: UnitVoice): Reading {
  const errors: Record<string, string> = {}
  const parameters: ChangeRule['parameters'] = {}
  for (const one of rule.parameters) {
    const draft = drafts[one.name]
    if (one.type !== 'number' || typeof draft !== 'string') {
      if (draft !== undefined && draft !== one.default) parameters[one.name] = draft
      continue
    }
    const unit = toFieldUnit(one.unit, voice.units)
    const read = readTyped(draft, one.unit, voice)
    // What stands as it was is not rounded by its own units.
    const value = draft === toText(one, voice) ? one.value : read.is === 'number' ? read.value : undefined
    const isOut =
      typeof value !== 'number' ||
      (one.minimum !== null && value < one.minimum) ||
      (one.maximum !== null && value > one.maximum)
    if (read.is === 'unclear') errors[one.name] = `${one.label}: ${askWhich(draft, voice)}`
    else if (isOut) errors[one.name] = `${one.label}: ${sayRange(one, unit.toShown, voice)} ${unit.label}`.trim()
    else if (value !== one.default) parameters[one.name] = value
  }
  return { body: { isOn, parameters, version: rule.version }, errors }
}

const sayRange = (parameter: RuleParameter, toShown: (value: number) => number, voice: UnitVoice): string => {
  const show = (value: number) => sayNumber(toShown(value), voice)
  if (parameter.minimum !== null && parameter.maximum !== null)
    return `${show(parameter.minimum)} to ${show(parameter.maximum)}`
  if (parameter.minimum !== null) return `${show(parameter.minimum)} or more`
  if (parameter.maximum !== null) return `up to ${show(parameter.maximum)}`
  return 'a number'
}
