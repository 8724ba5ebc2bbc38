import type { CareKind, ComparedBy, LeftOutReason, ProtocolPart, Season, SurvivalStageName } from '@fryward/shared'
import { broodWords, isCarried, sayComing, sayOut } from './brood.ts'

/** What the young of a clutch come through; `settled` are counted as they are moved to grow-out. */
const stageLabels = {
  laid: 'Eggs laid',
  hatched: 'Hatched',
  first_feed: 'First food',
  day_5: 'Day 5',
  metamorphosis: 'Metamorphosis',
  settled: 'Settled',
  placed: 'Placed or kept',
} as const satisfies Record<SurvivalStageName, string>

/** Young that a parent let go are small fish: they have no settling, and are counted as they are moved all the same. */
export function sayStage(stage: SurvivalStageName, care: CareKind): string {
  if (!isCarried(care)) return stageLabels[stage]
  const { eggs, out } = broodWords(care)
  return { ...stageLabels, laid: eggs, hatched: out, settled: 'In grow-out' }[stage]
}

export const comparedByLabels = {
  pair: 'Pair',
  culture: 'Culture they ate from',
  tank: 'Tank of their first days',
  protocol: 'What they were fed first',
  green_water: 'Green water by day 5',
  artemia_day: 'Day of their first Artemia',
  species: 'Species',
  season: 'Season',
} as const satisfies Record<ComparedBy, string>

export const seasonLabels = {
  dec_feb: 'December to February',
  mar_may: 'March to May',
  jun_aug: 'June to August',
  sep_nov: 'September to November',
} as const satisfies Record<Season, string>

/** Foods of the first days, as they stand in a list. */
export const protocolLabels = {
  rotifers: 'rotifers',
  copepods: 'copepods',
  artemia: 'Artemia',
  dry: 'dry food',
  frozen: 'frozen food',
  fresh: 'fresh food',
  green_water: 'green water',
} as const satisfies Record<ProtocolPart, string>

/** Why clutches stand in no group, said after how many they are. */
export function sayLeftOut(reason: LeftOutReason, cares: readonly CareKind[]): string {
  if (reason === 'not_counted') return `not counted again since the ${sayComing(cares)}`
  if (reason === 'not_hatched') return `not ${sayOut(cares)}, or not raised`
  return leftOutLabels[reason]
}

const leftOutLabels = {
  several: 'in more than one group at once',
  not_known: 'in a group that is not known',
  too_many_groups: 'in groups smaller than the twelve largest',
} as const satisfies Partial<Record<LeftOutReason, string>>
