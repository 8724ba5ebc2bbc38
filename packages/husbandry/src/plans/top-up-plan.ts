import { type Grazing, type PreyTopUp, preyTopUp } from '@fryward/live-feed'
import { elapsedDays } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, roundOfInstant } from '../calendar/rounds.ts'
import type { larvalPreyTopUpDefinition } from '../definitions/larvae/larval-prey-top-up.ts'
import type { FactOf } from '../facts/fact.ts'
import { Gap } from '../rule/gap.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { computedLink } from '../rule/why.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { batchNumbers } from '../state/batch-state.ts'
import { type CultureDensity, densityAt } from '../state/culture-state.ts'
import { culturesFeeding } from '../state/feed-links.ts'
import { grazingOf, type PreyCount, preyCounts, preyFeedings } from '../state/grazing.ts'
import { larvalDiet, tankOf } from '../state/larval-diet.ts'
import { setAsideFor } from '../state/set-aside.ts'
import { preyFeedRounds, topUpInForce } from './prey-feed-rounds.ts'

type TopUpParameterValues = ParameterValues<typeof larvalPreyTopUpDefinition.parameters>

/**
 * What is in the water before a feed: counted since the last feed; or the last count standing in until the next one;
 * or taken as the level at which one tops up, for want of a count; or nothing, before the first feed.
 */
export type Residual =
  | { kind: 'counted' | 'last-count'; perMl: number; count: PreyCount }
  | { kind: 'assumed' | 'none-fed'; perMl: number }

export type TopUpPlan = {
  round: DayRound
  tank: SnapshotTank
  culture: SnapshotCulture
  density: CultureDensity
  residual: Residual
  larvae: number | null
  grazing: Grazing | null
  hoursUntilNextFeed: number
  topUp: PreyTopUp
  /** Animals and culture after the bounds: never above the most per mL, never more than the culture may give. */
  animals: number
  cultureMl: number
  isBoundedByCulture: boolean
  isNeeded: boolean
}

// The last count may stand in for the next for a day, no longer. common practice
const longestStandInDays = 1
/** No single day takes more than half of a culture, whatever is fed from it. common practice */
export const mostOfCulture = 0.5

const remembered = rememberedBySnapshot<TopUpPlan[] | Gap | null>()

/**
 * What each feed of a day asks for; null when the batch does not eat rotifers that day.
 * @throws Gap when something is missing that somebody has to say first.
 */
export function topUpPlans(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): TopUpPlan[] | null {
  const found = remembered(snapshot, `${batch.id} ${day.date}`, () => {
    try {
      return workOut(snapshot, batch, day)
    } catch (error) {
      if (error instanceof Gap) return error
      throw error
    }
  })
  if (found instanceof Gap) throw found
  return found
}

function workOut(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): TopUpPlan[] | null {
  const { isOn, parameters } = topUpInForce(snapshot)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || diet?.isOnRotifers === false) return null
  if (!diet) throw new Gap(`${batch.name}: no profile of ${batch.species} says what its larvae eat.`)
  const source = sourceOf(snapshot, batch, day)
  const setAside = setAsideOf(snapshot, { batch, culture: source.culture, day })
  const rounds = preyFeedRounds(snapshot, day)
  const about = { prey: 'rotifers', until: day.endsAt } as const
  const known: Known = {
    ...source,
    larvae: batchNumbers(snapshot, batch).now,
    grazing: grazingOf(snapshot, { batch, tank: source.tank, ...about }),
    feedsPerDay: rounds.length,
  }
  const water: Water = {
    count: preyCounts(snapshot, batch, about).at(-1),
    fed: preyFeedings(snapshot, batch, about).at(-1),
  }
  return rounds.map((round, index) => {
    const residual = residualBefore(water, { day, rounds, index, assumedPerMl: parameters.refillUnderPerMl })
    const hoursUntilNextFeed = hoursBetween(round, rounds[index + 1], { day, rounds })
    const feed = { round, residual, hoursUntilNextFeed, parameters }
    if (!setAside) return feedPlan(known, feed)
    const asHarvested = feedPlan({ ...known, density: setAside.density }, feed)
    if (asHarvested.cultureMl <= setAside.ml) return asHarvested
    return feedPlan({ ...known, density: mixed(setAside, known.density, asHarvested.cultureMl) }, feed)
  })
}

type Source = Pick<TopUpPlan, 'tank' | 'culture' | 'density'>
type Known = Source & Pick<TopUpPlan, 'larvae' | 'grazing'> & { feedsPerDay: number }
type Water = { count: PreyCount | undefined; fed: FactOf<'feeding'> | undefined }

/** The tank that is topped up, and the culture that gives, as dense as it is by now. */
function sourceOf(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Source {
  const tank = tankOf(snapshot, batch)
  if (!tank) throw new Gap(`${batch.name}: say which tank it is in.`)
  const culture = culturesFeeding(snapshot, batch, day.date).find(({ kind }) => kind === 'rotifer')
  if (!culture) throw new Gap(`${batch.name}: say which rotifer culture feeds it.`)
  const density = densityAt(snapshot, culture, { at: day.rounds[0]!.startsAt, until: day.endsAt })
  if (!density || density.densityPerMl <= 0)
    throw new Gap(`${batch.name} is fed from ${culture.name}: count ${culture.name}, and the amount follows.`)
  return { tank, culture, density }
}

type SetAsideWater = { ml: number; density: CultureDensity }

/** How dense a feed is that takes all that stands harvested, `wantedMl` as dense as that, and the rest out of the culture. */
function mixed(setAside: SetAsideWater, now: CultureDensity, wantedMl: number): CultureDensity {
  const restMl = ((wantedMl - setAside.ml) * setAside.density.densityPerMl) / now.densityPerMl
  const perMl = (wantedMl * setAside.density.densityPerMl) / (setAside.ml + restMl)
  // As shown, so that the chain of "why" multiplies out.
  const densityPerMl = Number(perMl.toPrecision(3))
  const link = computedLink('what stands harvested, and the rest from the culture', null, {
    label: 'with what stands harvested',
    quantity: { value: densityPerMl, unit: 'per_mL' },
  })
  return { ...now, densityPerMl, because: [...now.because, link] }
}

/**
 * What stands harvested for the batch is as dense as the culture was when it was drawn; filling up thins the rest, which
 * a feed that it does not cover comes out of. Null when nothing stands.
 */
function setAsideOf(
  snapshot: RoomSnapshot,
  { batch, culture, day }: { batch: SnapshotBatch; culture: SnapshotCulture; day: HusbandryDay },
): SetAsideWater | null {
  const { ml, harvest } = setAsideFor(snapshot, batch, day)
  if (ml <= 0 || !harvest) return null
  const density = densityAt(snapshot, culture, { at: day.rounds[0]!.startsAt, until: harvest.at })
  return density && density.densityPerMl > 0 ? { ml, density } : null
}

/** What one feed asks for: the animals wanted, within what the water may hold and what the culture may give. */
function feedPlan(
  known: Known,
  feed: Pick<TopUpPlan, 'round' | 'residual' | 'hoursUntilNextFeed'> & { parameters: TopUpParameterValues },
): TopUpPlan {
  const { tank, culture, density, larvae, grazing, feedsPerDay } = known
  const { round, residual, hoursUntilNextFeed, parameters } = feed
  const topUp = preyTopUp({
    targetPerMl: parameters.targetPerMl,
    residualPerMl: residual.perMl,
    volumeL: tank.volumeL,
    ...(larvae === null ? {} : { larvae }),
    ...(grazing === null ? {} : { eatenPerLarvaPerHour: grazing.eatenPerLarvaPerHour }),
    hoursUntilNextFeed,
    densityOfCulturePerMl: density.densityPerMl,
    sievingLoss: parameters.sievingLoss,
  })
  const tankMl = tank.volumeL * 1000
  const roomFor = Math.max(0, (parameters.mostPerMl - residual.perMl) * tankMl)
  const perMlGiven = density.densityPerMl * (1 - parameters.sievingLoss)
  const wantedMl = Math.min(topUp.animalsToAdd, roomFor) / perMlGiven
  const mostMl = (mostOfCulture * culture.volumeL * 1000) / feedsPerDay
  const cultureMl = Math.min(wantedMl, mostMl)
  const leftPerMl = residual.perMl - topUp.expectedGrazing / tankMl
  return {
    round,
    tank,
    culture,
    density,
    residual,
    larvae,
    grazing,
    hoursUntilNextFeed,
    topUp,
    animals: cultureMl * perMlGiven,
    cultureMl,
    isBoundedByCulture: wantedMl > mostMl,
    isNeeded: cultureMl > 0 && (residual.kind !== 'counted' || leftPerMl < parameters.refillUnderPerMl),
  }
}

function residualBefore(
  { count, fed }: Water,
  { day, rounds, index, assumedPerMl }: { day: HusbandryDay; rounds: DayRound[]; index: number; assumedPerMl: number },
): Residual {
  if (!fed && !count) return index === 0 ? { kind: 'none-fed', perMl: 0 } : { kind: 'assumed', perMl: assumedPerMl }
  const isOld = !count || elapsedDays(count.fact.at, day.startsAt) > longestStandInDays
  if (isOld) return { kind: 'assumed', perMl: assumedPerMl }
  // A count speaks for its own round; the feeds after it will each have their own.
  const countedIn = rounds.findIndex(({ id }) => id === roundOfInstant(rounds, count.fact.at)?.id)
  const isForThisFeed = (!fed || count.fact.at > fed.at) && countedIn >= index && count.fact.at >= day.startsAt
  return { kind: isForThisFeed ? 'counted' : 'last-count', perMl: count.perMl, count }
}

function hoursBetween(
  round: DayRound,
  next: DayRound | undefined,
  { day, rounds }: { day: HusbandryDay; rounds: DayRound[] },
): number {
  const untilNext = next
    ? elapsedDays(round.startsAt, next.startsAt)
    : elapsedDays(round.startsAt, day.endsAt) + elapsedDays(day.startsAt, rounds[0]!.startsAt)
  return Math.min(48, Math.max(0, untilNext * 24))
}

/** Litres of a culture that a batch's feeds of the day ask for; 0 when it cannot be worked out or is not on rotifers. */
export function rotiferNeedL(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): number {
  try {
    const plans = topUpPlans(snapshot, batch, day) ?? []
    return plans.filter(({ isNeeded }) => isNeeded).reduce((sum, { cultureMl }) => sum + cultureMl / 1000, 0)
  } catch (error) {
    // The batch's own top-up says what is missing; the culture is thinned all the same.
    if (error instanceof Gap) return 0
    throw error
  }
}
