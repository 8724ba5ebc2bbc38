import type { Phrase } from '@fryward/shared'

const escapePattern = (text: string) => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)

/** Ways the engine's sentences name their vessel, and what is left of each under a heading that names it already. */
const waysToName: [before: string, after: string, left: string][] = [
  [':\\s*', '\\s*$', ''],
  ['\\b(Look) at ', '', '$1'],
  ['\\b(See to) ', '', '$1 it'],
  ['\\b(that) ', '', '$1 it'],
  [' out of ', '', ' out'],
  [',? (?:of|into|for|from|over|in|with) ', '', ''],
  [', ', '', ''],
  [' ', '', ''],
]

/**
 * The sentence without its vessel's name, for lines that stand under it: "{amount} into R2, second feed" becomes
 * "{amount}, second feed". A sentence that would begin with the name, or does not hold it, stays whole.
 */
export function shortTitle(title: Phrase, subjectName: string): Phrase {
  const name = `${escapePattern(subjectName)}(?![\\p{L}\\p{N}])`
  for (const [before, after, left] of waysToName) {
    const way = new RegExp(`${before}${name}${after}`, 'u')
    const text = title.text.replace(way, left)
    if (text !== title.text && text.trim() !== '') return { ...title, text }
  }
  return title
}
