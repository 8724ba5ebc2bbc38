import type { Rule } from '@fryward/shared'

const textOf = (rule: Rule) =>
  [rule.title, rule.sentence, ...rule.parameters.flatMap((one) => [one.label, one.source.citation])]
    .join(' ')
    .toLowerCase()

/** Rules that hold every typed word somewhere: in title, sentence, parameters or sources. */
export function findRules(rules: Rule[], typed: string): Rule[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean)
  if (words.length === 0) return rules
  return rules.filter((rule) => {
    const text = textOf(rule)
    return words.every((word) => text.includes(word))
  })
}
