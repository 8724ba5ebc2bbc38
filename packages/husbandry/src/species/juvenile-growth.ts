import { findSpecies } from './catalogue.ts'
import { clownfishGrowth } from './clownfish-growth.ts'
import type { SpeciesProfile } from './schema.ts'

/**
 * How young fish grow. The middle is what rations rest on; the slow and the fast end say which lengths are no surprise.
 */
export type Growth = SpeciesProfile['growth']
type Point = Growth['lengths']['value']['middle'][number]

/** As the species grows; as clownfish do where nobody knows it. */
export const growthOf = (species: string): Growth => findSpecies(species)?.growth ?? clownfishGrowth

/** Straight between two published lengths; the last one holds after it, for nothing is known of later. */
function at(points: readonly Point[], ageDays: number): number {
  const age = Math.max(0, ageDays)
  const next = points.findIndex((point) => point.ageDays >= age)
  if (next === -1) return points.at(-1)!.lengthMm
  const to = points[next]!
  const from = points[Math.max(0, next - 1)]!
  const share = to.ageDays === from.ageDays ? 0 : (age - from.ageDays) / (to.ageDays - from.ageDays)
  return from.lengthMm + (to.lengthMm - from.lengthMm) * share
}

/** Length (mm, nose to tail) of a young fish so many days after it hatched. */
export const lengthMmAt = ({ lengths }: Growth, ageDays: number): number => at(lengths.value.middle, ageDays)

/** Lengths (mm) between which a young fish of that age is no surprise. */
export const usualLengthsMm = ({ lengths }: Growth, ageDays: number): { from: number; to: number } => ({
  from: at(lengths.value.slow, ageDays),
  to: at(lengths.value.fast, ageDays),
})

/** Weight (g) of a young fish of that length (mm). */
export function weightGOf({ weight }: Growth, lengthMm: number): number {
  const { weightG, atMm, exponent } = weight.value
  return weightG * (lengthMm / atMm) ** exponent
}

/** Length (mm) of a fish that weighs so much (g). */
function lengthMmOf({ weight }: Growth, ofG: number): number {
  const { weightG, atMm, exponent } = weight.value
  return atMm * (ofG / weightG) ** (1 / exponent)
}

/**
 * Rules speak of lengths as clownfish have them. A fish of another build is as far on as a clownfish that weighs as much:
 * its length (mm) as one of those, and one of those as its own.
 */
export const asClownfishMm = (growth: Growth, lengthMm: number): number =>
  lengthMmOf(clownfishGrowth, weightGOf(growth, lengthMm))
export const ownMm = (growth: Growth, clownfishMm: number): number =>
  lengthMmOf(growth, weightGOf(clownfishGrowth, clownfishMm))
