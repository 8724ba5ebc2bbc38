import type { Rule, RuleParameter, UnitSystem } from '@fryward/shared'
import { cutAtPlaces } from '../phrases/pieces.ts'
import { toFieldUnit } from '../quantities/shown.ts'

/** A rule's sentence in order: words, and parameters with the unit to say behind them; empty where the words say it. */
export type RulePiece = string | { parameter: RuleParameter; unit: string }

export function rulePieces(
  { sentence, parameters }: Pick<Rule, 'sentence' | 'parameters'>,
  units: UnitSystem,
): RulePiece[] {
  const parts = cutAtPlaces(sentence)
  return parts.flatMap((part, index): RulePiece[] => {
    if (index % 2 === 0) return part === '' ? [] : [part]
    const parameter = parameters.find((one) => one.name === part)
    if (!parameter) return [`{${part}}`]
    const { label } = toFieldUnit(parameter.unit, units)
    const isSaid = isUnitSaid({ label, before: parts[index - 1] ?? '', behind: parts[index + 1] ?? '' })
    return [{ parameter, unit: isSaid ? '' : label }]
  })
}

/** "every 3 days", "from day 3", "half a fish a litre": the sentence has the word already. */
const isUnitSaid = ({ label, before, behind }: { label: string; before: string; behind: string }): boolean =>
  (label !== '' && behind.trimStart().startsWith(label)) ||
  (label === 'days' && /\bday\s*$/i.test(before)) ||
  (label === 'per L' && /^\s*\w+ a litre\b/.test(behind))
