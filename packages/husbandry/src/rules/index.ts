import type { Rule } from '../engine/rule.ts'
import { clutchLook } from './broodstock/clutch-look.ts'
import { pairFeed } from './broodstock/pair-feed.ts'
import { pairLookForEggs } from './broodstock/pair-look-for-eggs.ts'
import { larvalPreyCount } from './larvae/prey-count.ts'
import { larvalPreyTopUp } from './larvae/prey-top-up.ts'
import { rotiferBrush } from './live-food/rotifer-brush.ts'
import { rotiferCount } from './live-food/rotifer-count.ts'
import { rotiferFeed } from './live-food/rotifer-feed.ts'
import { rotiferHarvest } from './live-food/rotifer-harvest.ts'
import { rotiferRefill } from './live-food/rotifer-refill.ts'
import { roomWaterToMix } from './room/water-to-mix.ts'

/** Every rule, in hygiene order of stations and in the order in which a round does them at one vessel. */
export const rules: readonly Rule[] = [
  rotiferCount,
  rotiferHarvest,
  rotiferRefill,
  rotiferBrush,
  rotiferFeed,
  larvalPreyCount,
  larvalPreyTopUp,
  pairFeed,
  pairLookForEggs,
  clutchLook,
  roomWaterToMix,
]

/** The rule with this id, or undefined. */
export function findRule(id: string): Rule | undefined {
  return rules.find((rule) => rule.id === id)
}
