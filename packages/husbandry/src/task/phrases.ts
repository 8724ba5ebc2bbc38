import type { Because, Phrase, Quantity, TaskContent, TaskStep } from '@fryward/shared'

/** A sentence whose `{name}` places are quantities that the screen shows in the room's units. */
export function phrase(text: string, quantities: Record<string, Quantity> = {}): Phrase {
  return { text, quantities }
}

/** Whose or what the steps behind it are for. */
export const stepHeading = (text: string): TaskStep => ({ ...phrase(text), isHeading: true })

/** Links of "why" in order; the first joins nothing. */
function chained(links: readonly Because[]): Because[] {
  return links.map((link, index) => (index === 0 ? { ...link, joins: null } : link))
}

/** A task's content with the empty parts filled in. */
export function taskContent(
  content: Pick<TaskContent, 'verb' | 'title'> & Partial<Omit<TaskContent, 'verb' | 'title'>>,
): TaskContent {
  const because = chained(content.because ?? [])
  return { amount: null, amountOf: null, steps: [], cautions: [], fields: [], ...content, because }
}

/** A chance as people say it, with the number beside it: "likely (62%)". */
export function likelihoodText(probability: number): string {
  const percent = `${Math.round(probability * 100)}%`
  if (probability >= 0.85) return `almost certain (${percent})`
  if (probability >= 0.5) return `likely (${percent})`
  if (probability >= 0.2) return `possible (${percent})`
  return `unlikely (${percent})`
}
