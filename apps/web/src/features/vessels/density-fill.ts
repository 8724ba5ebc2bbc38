import type { CultureOutlook } from '@fryward/shared'

const median = (values: number[]): number | undefined => {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)]
}

/** The newest density against the culture's own usual (the median of its counts): 1 is as always; null without counts. */
export function fillAgainstUsual(outlook: CultureOutlook): number | null {
  const newest = outlook.counts.toSorted((a, b) => a.at.localeCompare(b.at)).at(-1)
  const usual = median(outlook.counts.map((count) => count.densityPerMl))
  if (!newest || !usual) return null
  return newest.densityPerMl / usual
}
