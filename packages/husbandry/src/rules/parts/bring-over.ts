import { SALINITY_SHOCK } from '@fryward/live-feed'
import type { Phrase, Quantity } from '@fryward/shared'
import { litres, measurableL, psu } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'

type Water = { name: string; salinity: number }

// Three equal additions, ten minutes apart: a quarter of the difference is left when they go in. common practice
const additions = 3
const apart: Quantity = { value: 10, unit: 'minutes' }

/** What fish bear at once over a drip line or a few additions; more is brought nearer first, over days. common practice */
export const mostForFish = 4

/**
 * How sieved live food goes from one water into another: in so much water like its own, to which the other is added in
 * three equal parts. None where both are alike enough (an abrupt change of more than 5 harms: Treece & Davis 2000, SRAC Publication 701).
 */
export function bringOverSteps(given: { from: Water; to: Water; volumeL: number }): Phrase[] {
  const { from, to, volumeL } = given
  const difference = Math.abs(from.salinity - to.salinity)
  if (difference <= SALINITY_SHOCK) return []
  // A quarter of the culture's own volume holds them for half an hour with air. common practice
  const startL = Math.max(0.1, measurableL(volumeL / 4))
  const eachL = measurableL(startL * Math.max(1, (difference / SALINITY_SHOCK - 1) / additions))
  return [
    phrase(
      `${from.name} is at {theirs}, ${to.name} at {ours}: rinse them into {start} of water at {theirs}, with air.`,
      {
        theirs: psu(from.salinity),
        ours: psu(to.salinity),
        start: litres(startL),
      },
    ),
    phrase(`Add {each} of water from ${to.name} three times, {apart} apart; then they may go in.`, {
      each: litres(eachL),
      apart,
    }),
  ]
}
