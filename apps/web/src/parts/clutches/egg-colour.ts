import type { Clutch, EggStage } from '@fryward/shared'
import { dayMs } from '@fryward/words'

/** Colour by share of the way to hatching: orange, dark, eyed, silver in the last nights. from memory */
const stageFrom: [share: number, stage: EggStage][] = [
  [0.85, 'silver'],
  [0.5, 'eyed'],
  [0.25, 'dark'],
  [0, 'orange'],
]

/** The night it is expected on: the likeliest one. */
export const likeliestNight = (clutch: Clutch) =>
  clutch.nights.reduce<Clutch['nights'][number] | undefined>(
    (best, night) => (best === undefined || night.probability > best.probability ? night : best),
    undefined,
  )

/** Days from laying to the evening of the likeliest night; undefined when no night can be expected. */
export function expectedHatchDays(clutch: Clutch): number | undefined {
  const night = likeliestNight(clutch)
  if (!night) return undefined
  // Whatever the room's zone is: a colour lasts for days, and half a day to either side does not change it.
  return (new Date(`${night.date}T20:00:00Z`).getTime() - new Date(clutch.spawnedAt).getTime()) / dayMs
}

/** The colour the eggs should have by now; undefined when no night can be expected. */
export function expectedEggStage(clutch: Clutch): EggStage | undefined {
  const hatchDays = expectedHatchDays(clutch)
  if (hatchDays === undefined) return undefined
  if (hatchDays <= 0) return 'silver'
  const share = clutch.ageDays / hatchDays
  return stageFrom.find(([from]) => share >= from)?.[1]
}
