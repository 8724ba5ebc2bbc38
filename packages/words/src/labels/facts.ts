import type {
  CareAct,
  CareKind,
  CountTarget,
  EggStage,
  FactKind,
  Food,
  HarvestDestination,
  Outcome,
  PhotoLook,
  Sign,
} from '@fryward/shared'
import { broodWords, isCarried } from './brood.ts'

const factKindLabels = {
  count: 'Count',
  harvest: 'Harvest',
  feeding: 'Feeding',
  inoculation: 'Animals put in',
  water_change: 'Water change',
  water_test: 'Water test',
  loss: 'Loss',
  transfer: 'Move',
  observation: 'Seen',
  care: 'Care',
  spawning: 'Eggs laid',
  hatch: 'Hatch',
  treatment: 'Treatment',
  outcome: 'Left the group',
  decision: 'Decision',
  water_reading: 'Gauge',
  cure: 'So that food lasts',
} as const satisfies Record<FactKind, string>

const countTargetLabels = {
  culture: 'The culture',
  copepod_nauplii: 'Copepod nauplii',
  prey_rotifers: 'Rotifers in the water',
  prey_artemia: 'Artemia in the water',
  larvae: 'Larvae',
  eggs: 'Eggs',
  juveniles: 'Juveniles',
  algal_cells: 'Algal cells',
} as const satisfies Record<CountTarget, string>

/** What kind of record it is, of a clutch or batch whose eggs were there. */
export function sayFactKind(kind: FactKind, care: CareKind | undefined): string {
  if (!isCarried(care)) return factKindLabels[kind]
  return kind === 'spawning' ? broodWords(care).eggs : kind === 'hatch' ? 'Release' : factKindLabels[kind]
}

export const sayCountTarget = (target: CountTarget, care: CareKind | undefined): string =>
  target === 'larvae' && isCarried(care) ? 'Young' : countTargetLabels[target]

/** Where fish went that are no longer in the room's care; none of them is a death. */
export const outcomeLabels = {
  placed: 'placed',
  kept: 'kept for breeding',
  culled: 'culled',
} as const satisfies Record<Outcome, string>

export const destinationLabels = {
  larval_batch: 'A larval batch',
  culture: 'Another culture',
  other_fish: 'Other fish',
  chilled_reserve: 'Chilled reserve',
  drain: 'The drain',
} as const satisfies Record<HarvestDestination, string>

export const foodLabels = {
  concentrate: 'Microalgae concentrate',
  live_microalgae: 'Live microalgae',
  rotifers: 'Rotifers',
  copepods: 'Copepods',
  artemia: 'Artemia',
  dry: 'Dry food',
  frozen: 'Frozen food',
  fresh: 'Fresh food',
} as const satisfies Record<Food, string>

export const signLabels = {
  swimming_well: 'Swimming well',
  swimming_slow: 'Swimming slowly',
  sinking: 'Sinking',
  clumping: 'Clumping',
  foam: 'Foam',
  bad_smell: 'Bad smell',
  ciliates: 'Ciliates',
  water_green: 'Water green',
  water_tinted: 'Water tinted',
  water_clear: 'Water clear',
  eggs_seen: 'Eggs seen',
  no_eggs: 'No eggs',
  larvae_out: 'Larvae out',
  fighting: 'Fighting',
  not_eating: 'Not eating',
  gasping: 'Gasping',
  spots_or_wounds: 'Spots or wounds',
  settled: 'Most barred and settled',
  all_well: 'All well',
} as const satisfies Record<Sign, string>

/** What is seen of a parent is whether it carries. */
const carriedSigns: Partial<Record<Sign, string>> = {
  eggs_seen: 'Still carrying',
  no_eggs: 'Not carrying any more',
  larvae_out: 'Young out',
}

export const saySign = (sign: Sign, care: CareKind | undefined): string =>
  (isCarried(care) ? carriedSigns[sign] : undefined) ?? signLabels[sign]

export const eggStageLabels = {
  orange: 'Orange',
  dark: 'Dark',
  eyed: 'Eyed',
  silver: 'Silver eyes',
} as const satisfies Record<EggStage, string>

/** What an owner's photo shows: "This is what … look like here". */
export const photoLookLabels = {
  eggs_orange: 'Orange eggs, just laid',
  eggs_dark: 'Dark eggs',
  eggs_eyed: 'Eyed eggs',
  eggs_silver: 'Eggs with silver eyes, the last day',
  full_bellies: 'Larvae with full bellies',
  hungry_larvae: 'Hungry larvae',
  settled_larvae: 'Barred and settled larvae',
  deformed_larvae: 'Deformed larvae',
} as const satisfies Record<PhotoLook, string>

export const careActLabels = {
  brush_walls: 'Walls brushed',
  clean_filter: 'Filter cleaned',
  siphon_bottom: 'Bottom siphoned',
  mix_water: 'Water mixed',
  shake_bottle: 'Bottle shaken',
  pull_nest: 'Nest pulled',
  darken: 'Darkened',
  disinfect_tools: 'Tools disinfected',
  look_over_equipment: 'Equipment looked over',
  test_battery_air: 'Battery air tested',
  move_nest_back: 'Nest moved back',
  restart_culture: 'Culture restarted',
  discard: 'Discarded',
  check_backup: 'Backup checked',
  discard_reserve: 'Chilled reserve discarded',
  start_artemia: 'Artemia cysts started',
  enrich_artemia: 'Artemia enriched',
  check_light: 'Light checked',
  ready_hatch_tank: 'Hatch tank made ready',
  remove_dead_eggs: 'Dead eggs taken out',
  fish_arrived: 'Fish arrived',
  fish_acclimatised: 'Fish brought over to the tank’s water',
  quarantine_goes_on: 'Quarantine goes on',
  quarantine_empty: 'Quarantine tank empty',
  looked_to_place: 'Looked which can be placed',
  enrich_rotifers: 'Rotifers enriched',
  test_cysts: 'Cysts tested',
  decapsulate: 'Cysts decapsulated',
  order_rotifers: 'Rotifers ordered',
} as const satisfies Record<CareAct, string>
