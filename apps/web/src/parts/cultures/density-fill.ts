import type { Culture, CultureKind, Fact, Id } from '@fryward/shared'
import { densityOf } from '@/parts/facts/density-of.ts'

/**
 * Animals (cells for microalgae) per mL that a culture in good use stands at, only for how full its drawing looks while
 * it has too few counts of its own: a fed batch culture of rotifers and newly hatched Artemia, copepods, green water in
 * a bag. from memory
 */
const usualOfKindPerMl: Record<CultureKind, number> = {
  rotifer: 300,
  copepod: 5,
  microalgae: 2e6,
  artemia_hatch: 150,
}

/** Fewer counts than these say nothing about what is usual. assumption */
const fewestCounts = 3

/** What each culture usually stands at, per mL: the median of its own standing counts, where there are enough. */
export function usualDensities(facts: Fact[]): Map<Id, number> {
  const counted = new Map<Id, number[]>()
  for (const fact of facts) {
    if (fact.kind !== 'count' || fact.struckAt !== null || fact.data.of !== 'culture') continue
    const density = densityOf(fact.data)
    if (density !== undefined) counted.set(fact.subjectId, [...(counted.get(fact.subjectId) ?? []), density])
  }
  return new Map(
    [...counted].filter(([, all]) => all.length >= fewestCounts).map(([cultureId, all]) => [cultureId, median(all)]),
  )
}

function median(numbers: number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b)
  const middle = (sorted.length - 1) / 2
  return ((sorted[Math.floor(middle)] ?? 0) + (sorted[Math.ceil(middle)] ?? 0)) / 2
}

/** The density by now against the culture's own usual: 1 is usual; null while nobody has counted. */
export function fillAgainstUsual(
  { kind, densityNow }: Pick<Culture, 'kind' | 'densityNow'>,
  usualPerMl: number | undefined,
): number | null {
  if (densityNow === null) return null
  // A culture that was mostly found empty has no usual to measure by.
  const usual = usualPerMl !== undefined && usualPerMl > 0 ? usualPerMl : usualOfKindPerMl[kind]
  return densityNow.perMl / usual
}
