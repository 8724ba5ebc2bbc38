import type { CultureEffect, CultureVessel } from './effects.ts'

/** A removal leaves something behind, or there is no culture to go on with. */
const mostRemoved = 0.999

/** What litres taken out of a culture take of its animals. */
export function removedFrom({ kind, volumeL }: CultureVessel, removedL: number): CultureEffect | null {
  // Copepods are counted as adults and copepodites, which the sieve holds back: only nauplii and water leave.
  if (removedL <= 0 || kind === 'copepod') return null
  return { way: 'removed', volumeL: removedL, fraction: Math.min(mostRemoved, removedL / volumeL) }
}
