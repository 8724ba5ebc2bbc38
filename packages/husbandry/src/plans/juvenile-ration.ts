import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { liveFeedRounds } from '../calendar/light.ts'
import type { DayRound } from '../calendar/rounds.ts'
import { juvenileFeedDefinition } from '../definitions/juveniles/juvenile-feed.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotGroup } from '../snapshot/room-snapshot.ts'
import { asClownfishMm, growthOf, weightGOf } from '../species/juvenile-growth.ts'
import type { WeanedFood } from '../species/schema.ts'
import { weanedFoodOf } from '../species/weaned-food.ts'
import { groupNumbers } from '../state/group-state.ts'
import { type JuvenileSize, juvenileSize } from '../state/juvenile-growth.ts'
import { tankOf } from '../state/larval-diet.ts'
import { litDay } from '../state/tank-light.ts'

export type GroupRation = {
  group: SnapshotGroup
  /** What they are weaned to. */
  food: WeanedFood
  number: number | null
  size: JuvenileSize
  /** As far on as a clownfish of that length. */
  likeMm: number
  eachG: number
  /** Of their weight a day: most while small, less as they grow. */
  share: number
  /** Of their food for a day, g; null while nobody has said how many they are. */
  dayG: number | null
}

export type TankRation = { groups: GroupRation[]; rounds: DayRound[]; wanted: number; isSmall: boolean }

type Values = ParameterValues<typeof juvenileFeedDefinition.parameters>

/**
 * The day's food of all groups that share a group's tank, eldest first: whoever feeds a tank feeds all in it. The
 * smallest say how often.
 */
export function tankRation(snapshot: RoomSnapshot, group: SnapshotGroup, day: HusbandryDay): TankRation {
  const { parameters } = ruleInForce(snapshot, juvenileFeedDefinition)
  const groups = tankMates(snapshot, group).map((mate) => groupRation(snapshot, mate, { day, parameters }))
  const isSmall = groups.some(({ likeMm }) => likeMm < parameters.smallUntilMm)
  const wanted = isSmall ? parameters.smallFeedsPerDay : parameters.feedsPerDay
  // They hunt by eye.
  const lit = litDay(snapshot, tankOf(snapshot, group), day.date)
  return { groups, rounds: liveFeedRounds(lit, { number: wanted, hoursBeforeDark: 0 }), wanted, isSmall }
}

function tankMates(snapshot: RoomSnapshot, { tankId }: SnapshotGroup): SnapshotGroup[] {
  return snapshot.groups
    .filter((each) => each.tankId === tankId && groupNumbers(snapshot, each).now !== 0)
    .sort((a, b) => (a.settledOn === b.settledOn ? (a.id < b.id ? -1 : 1) : a.settledOn < b.settledOn ? -1 : 1))
}

function groupRation(
  snapshot: RoomSnapshot,
  group: SnapshotGroup,
  { day, parameters }: { day: HusbandryDay; parameters: Values },
): GroupRation {
  const number = groupNumbers(snapshot, group).now
  const size = juvenileSize(snapshot, group, day)
  const growth = growthOf(group.species)
  const food = weanedFoodOf(group.species)
  const likeMm = asClownfishMm(growth, size.lengthMm)
  const eachG = weightGOf(growth, size.lengthMm)
  const share = shareAt(likeMm, food, parameters)
  return { group, food, number, size, likeMm, eachG, share, dayG: number === null ? null : number * eachG * share }
}

/**
 * Of their weight a day: falls straight with length, so that the day's grams of a fish never shrink while it grows. Frozen food
 * holds its water, so there is more of it.
 */
export function shareAt(likeMm: number, food: WeanedFood, values: Values): number {
  const { smallUntilMm, grownAtMm } = values
  const { small, grown } = sharesOf(food, values)
  const progress = (likeMm - smallUntilMm) / Math.max(1, grownAtMm - smallUntilMm)
  return small + (grown - small) * Math.min(1, Math.max(0, progress))
}

const sharesOf = (food: WeanedFood, values: Values) =>
  food === 'frozen'
    ? { small: values.smallFrozenShare, grown: values.frozenShare }
    : { small: values.smallShare, grown: values.shareOfWeight }
