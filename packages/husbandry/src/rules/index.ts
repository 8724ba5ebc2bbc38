import type { Rule } from '../rule/rule.ts'
import { clutchDark } from './broodstock/clutch-dark.ts'
import { clutchDeadEggs } from './broodstock/clutch-dead-eggs.ts'
import { clutchDecide } from './broodstock/clutch-decide.ts'
import { clutchLook } from './broodstock/clutch-look.ts'
import { clutchMorningAfter } from './broodstock/clutch-morning-after.ts'
import { clutchPullNest } from './broodstock/clutch-pull-nest.ts'
import { clutchReady } from './broodstock/clutch-ready.ts'
import { clutchSecondNight } from './broodstock/clutch-second-night.ts'
import { clutchWatch } from './broodstock/clutch-watch.ts'
import { pairFeed } from './broodstock/pair-feed.ts'
import { pairLookForEggs } from './broodstock/pair-look-for-eggs.ts'
import { pairConditioning, pairWatchNew, roomDayLength } from './broodstock/pair-watch.ts'
import { copepodCount } from './copepods/copepod-count.ts'
import { copepodFeed } from './copepods/copepod-feed.ts'
import { copepodHarvest } from './copepods/copepod-harvest.ts'
import { copepodRestart } from './copepods/copepod-restart.ts'
import { copepodSiphon } from './copepods/copepod-siphon.ts'
import { copepodTrouble } from './copepods/copepod-trouble.ts'
import { juvenileCount } from './juveniles/juvenile-count.ts'
import { juvenileFeed } from './juveniles/juvenile-feed.ts'
import { juvenilePlace } from './juveniles/juvenile-place.ts'
import { larvalArtemiaFeed } from './larvae/artemia-feed.ts'
import { foodKeepLarvae } from './larvae/food-keep-larvae.ts'
import { larvalGreenWater } from './larvae/green-water.ts'
import { larvalAmmoniaAct } from './larvae/larval-ammonia-act.ts'
import { larvalAmmoniaTest } from './larvae/larval-ammonia-test.ts'
import { larvalChilledFeed } from './larvae/larval-chilled-feed.ts'
import { larvalHeadCount } from './larvae/larval-head-count.ts'
import { larvalLight } from './larvae/larval-light.ts'
import { larvalLook } from './larvae/larval-look.ts'
import { larvalMove } from './larvae/larval-move.ts'
import { larvalNoneLeft } from './larvae/larval-none-left.ts'
import { larvalSiphon } from './larvae/larval-siphon.ts'
import { larvalWaterChange } from './larvae/larval-water-change.ts'
import { larvalWean } from './larvae/larval-wean.ts'
import { larvalPreyCount } from './larvae/prey-count.ts'
import { larvalPreyTopUp } from './larvae/prey-top-up.ts'
import { artemiaDecapsulate } from './live-food/artemia-decapsulate.ts'
import { artemiaDiscard } from './live-food/artemia-discard.ts'
import { artemiaEnrich } from './live-food/artemia-enrich.ts'
import { artemiaHarvest } from './live-food/artemia-harvest.ts'
import { artemiaLotTest } from './live-food/artemia-lot-test.ts'
import { artemiaStart } from './live-food/artemia-start.ts'
import { chilledReserveRule } from './live-food/chilled-reserve.ts'
import { cultureWaterTest } from './live-food/culture-water-test.ts'
import { foodBuyIn } from './live-food/food-buy-in.ts'
import { foodStartCulture } from './live-food/food-start-culture.ts'
import { rotiferBackupCheck } from './live-food/rotifer-backup.ts'
import { rotiferBackupWanted } from './live-food/rotifer-backup-wanted.ts'
import { rotiferBrush } from './live-food/rotifer-brush.ts'
import { rotiferCount } from './live-food/rotifer-count.ts'
import { rotiferEmpty } from './live-food/rotifer-empty.ts'
import { rotiferEnrich } from './live-food/rotifer-enrich.ts'
import { rotiferFeed } from './live-food/rotifer-feed.ts'
import { rotiferFilter } from './live-food/rotifer-filter.ts'
import { rotiferHarvest } from './live-food/rotifer-harvest.ts'
import { rotiferRecount } from './live-food/rotifer-recount.ts'
import { rotiferRefill } from './live-food/rotifer-refill.ts'
import { rotiferRescue } from './live-food/rotifer-rescue.ts'
import { rotiferRestart } from './live-food/rotifer-restart.ts'
import { rotiferTrouble } from './live-food/rotifer-trouble.ts'
import { concentrateShake, concentrateUseBy } from './microalgae/concentrates.ts'
import { microalgaeLook, microalgaeSplit } from './microalgae/microalgae-culture.ts'
import { quarantineAcclimatise } from './quarantine/quarantine-acclimatise.ts'
import { quarantineArrival } from './quarantine/quarantine-arrival.ts'
import { quarantineEnd } from './quarantine/quarantine-end.ts'
import { quarantineWatch } from './quarantine/quarantine-watch.ts'
import { roomBatteryAir, roomEquipment, roomTools } from './room/room-care.ts'
import { tankOxygenLow } from './room/tank-oxygen.ts'
import { tankTopUp } from './room/tank-top-up.ts'
import { tankWaterAct } from './room/tank-water-act.ts'
import { tankWaterChange } from './room/tank-water-change.ts'
import { tankWaterTest } from './room/tank-water-test.ts'
import { roomWaterToMix } from './room/water-to-mix.ts'

/** Every rule, in hygiene order of stations and in the order in which a round does them at one vessel. */
export const rules: readonly Rule[] = [
  // microalgae
  concentrateShake,
  concentrateUseBy,
  microalgaeLook,
  microalgaeSplit,
  // live food: copepods before rotifers, which would outgrow them; then the backup first
  copepodTrouble,
  copepodCount,
  copepodHarvest,
  copepodFeed,
  copepodSiphon,
  copepodRestart,
  rotiferBackupCheck,
  rotiferBackupWanted,
  rotiferTrouble,
  rotiferRescue,
  rotiferEmpty,
  rotiferCount,
  rotiferRecount,
  cultureWaterTest,
  rotiferHarvest,
  rotiferEnrich,
  rotiferRefill,
  rotiferBrush,
  rotiferFilter,
  rotiferFeed,
  rotiferRestart,
  chilledReserveRule,
  foodStartCulture,
  foodBuyIn,
  artemiaHarvest,
  artemiaEnrich,
  artemiaDiscard,
  artemiaStart,
  artemiaLotTest,
  artemiaDecapsulate,
  // larvae
  foodKeepLarvae,
  larvalAmmoniaTest,
  larvalAmmoniaAct,
  larvalSiphon,
  larvalWaterChange,
  larvalPreyCount,
  larvalPreyTopUp,
  larvalChilledFeed,
  larvalArtemiaFeed,
  larvalWean,
  larvalGreenWater,
  larvalHeadCount,
  larvalNoneLeft,
  larvalLook,
  larvalLight,
  larvalMove,
  // juveniles
  juvenileFeed,
  juvenileCount,
  juvenilePlace,
  // broodstock
  pairFeed,
  pairConditioning,
  pairLookForEggs,
  pairWatchNew,
  clutchMorningAfter,
  clutchSecondNight,
  clutchLook,
  clutchDeadEggs,
  clutchDecide,
  clutchReady,
  clutchPullNest,
  clutchDark,
  clutchWatch,
  roomDayLength,
  // quarantine, and the room itself
  quarantineArrival,
  quarantineAcclimatise,
  quarantineWatch,
  quarantineEnd,
  roomEquipment,
  roomBatteryAir,
  tankTopUp,
  tankWaterTest,
  tankWaterAct,
  tankOxygenLow,
  tankWaterChange,
  roomTools,
  roomWaterToMix,
]

/** The rule with this id, or undefined. */
export function findRule(id: string): Rule | undefined {
  return rules.find((rule) => rule.id === id)
}
