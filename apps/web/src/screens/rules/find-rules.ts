import type { Rule } from '@fryward/shared'

const wordsOf = (rule: Rule) =>
  [rule.title, rule.sentence, ...rule.parameters.flatMap((one) => [one.label, one.source.citation])]
    .join(' ')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)

/** Rules that hold a word beginning like each typed one, in title, sentence, parameters or sources: "thin" is not nothing. */
export function findRules(rules: Rule[], typed: string): Rule[] {
  const words = typed
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
  if (words.length === 0) return rules
  return rules.filter((rule) => {
    const held = wordsOf(rule)
    return words.every((word) => held.some((one) => one.startsWith(word)))
  })
}
