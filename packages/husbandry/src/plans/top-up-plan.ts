import { type PreyTopUp, preyTopUp } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { addHours, elapsedDays, elapsedHours } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { hoursByLight } from '../calendar/light.ts'
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
import { batchesFedBy, culturesFeeding, culturesLinked } from '../state/feed-links.ts'
import {
  eatenPerLarvaPerHour,
  grazingOf,
  type LearnedGrazing,
  type PreyCount,
  preyCounts,
  preyFeedings,
} from '../state/grazing.ts'
import { larvalDiet, tankOf } from '../state/larval-diet.ts'
import { rotifersFed, setAsideFor } from '../state/set-aside.ts'
import { type CultureSupply, cultureSupply } from './culture-supply.ts'
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
  grazing: LearnedGrazing | null
  /** Hours until the next feed, by light and dark. */
  hours: { light: number; dark: number }
  hoursUntilNextFeed: number
  topUp: PreyTopUp
  /** Animals and culture after the bounds: never above the most per mL, never more than the culture may give. */
  animals: number
  cultureMl: number
  /** What keeps the culture from giving all of it: half of it in a day, or its floor; null when it can. */
  boundedBy: CultureSupply['boundedBy'] | null
  isNeeded: boolean
}

// The last count may stand in for the next for a day, no longer. common practice
const longestStandInDays = 1

const remembered = rememberedBySnapshot<TopUpPlan[] | Gap | null>()
const rememberedWants = rememberedBySnapshot<Wanted | null>()

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
  const wanted = wantedBy(snapshot, batch, day)
  const [first] = wanted?.plans ?? []
  if (!wanted || !first) return null
  const { culture } = first
  const supply = cultureSupply(snapshot, culture, day)
  const straightMl = batchesFedBy(snapshot, culture, day.date).reduce(
    (sum, each) => sum + straightMlOf(snapshot, each, day),
    0,
  )
  const share = straightMl > 0 ? Math.min(1, (supply.leftL * 1000) / straightMl) : 1
  if (share === 1) return wanted.plans
  const mineMl = wanted.setAsideMl + straightMlOf(snapshot, batch, day) * share
  if (mineMl <= 0)
    throw new Gap(
      `${batch.name}: ${culture.name} has given all it can today${supply.boundedBy === 'floor' ? ' without falling under its floor' : ''}. Take rotifers from another culture or the chilled reserve, or give Artemia sooner.`,
    )
  const scale = Math.min(1, mineMl / wanted.openMl)
  return wanted.plans.map((plan) => ({
    ...plan,
    animals: plan.animals * scale,
    cultureMl: plan.cultureMl * scale,
    boundedBy: scale < 1 ? supply.boundedBy : null,
  }))
}

/** What a batch's feeds would take of its culture if that could give it all. */
type Wanted = { plans: TopUpPlan[]; setAsideMl: number; openMl: number }

/** Millilitres that a batch still wants today beyond what stands harvested for it; 0 when that cannot be worked out. */
function straightMlOf(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): number {
  const wanted = wantedOrNull(snapshot, batch, day)
  return wanted ? Math.max(0, wanted.openMl - wanted.setAsideMl) : 0
}

function wantedOrNull(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Wanted | null {
  return rememberedWants(snapshot, `${batch.id} ${day.date}`, () => {
    try {
      return wantedBy(snapshot, batch, day)
    } catch (error) {
      // The batch's own feeds say what is missing.
      if (error instanceof Gap) return null
      throw error
    }
  })
}

/** Live rotifers that a batch's feeds of the day will take, whether or not a culture can give them; null when nobody can say. */
export function rotifersAsked(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): number | null {
  const wanted = wantedOrNull(snapshot, batch, day)
  if (!wanted) return null
  return wanted.plans.filter(({ isNeeded }) => isNeeded).reduce((sum, plan, index) => sum + likelyOf(plan, index), 0)
}

/** A feed after the first for which an old count stands in will be counted anew: it brings back what is eaten till then. */
const likelyOf = ({ residual, grazing, topUp, animals }: TopUpPlan, index: number): number =>
  index > 0 && residual.kind === 'last-count' && grazing ? Math.min(animals, topUp.expectedGrazing) : animals

function wantedBy(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Wanted | null {
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
  }
  const water: Water = {
    count: preyCounts(snapshot, batch, about).at(-1),
    fed: preyFeedings(snapshot, batch, about).at(-1),
  }
  const plans = rounds.map((round, index) => {
    const residual = residualBefore(water, { day, rounds, index, assumedPerMl: parameters.refillUnderPerMl })
    const next = rounds[index + 1]?.startsAt ?? nextMorning(rounds[0]!, day)
    const hours = hoursByLight(snapshot.room, { from: round.startsAt, to: next })
    const feed = { round, residual, hours, parameters }
    if (!setAside) return feedPlan(known, feed)
    const asHarvested = feedPlan({ ...known, density: setAside.density }, feed)
    if (asHarvested.cultureMl <= setAside.ml) return asHarvested
    return feedPlan({ ...known, density: mixed(setAside, known.density, asHarvested.cultureMl) }, feed)
  })
  const fed = new Set(rotifersFed(snapshot, batch, day).map(({ at }) => roundOfInstant(rounds, at)?.id))
  const open = plans.filter(({ round, isNeeded }) => isNeeded && !fed.has(round.id))
  return { plans, setAsideMl: setAside?.ml ?? 0, openMl: open.reduce((sum, { cultureMl }) => sum + cultureMl, 0) }
}

/** The first feed of tomorrow: rounds keep their time of day. */
const nextMorning = (first: DayRound, day: HusbandryDay): Instant =>
  addHours(day.endsAt, elapsedHours(day.startsAt, first.startsAt))

type Source = Pick<TopUpPlan, 'tank' | 'culture' | 'density'>
type Known = Source & Pick<TopUpPlan, 'larvae' | 'grazing'>
type Water = { count: PreyCount | undefined; fed: FactOf<'feeding'> | undefined }

/** The tank that is topped up, and the culture that gives, as dense as it is by now. */
function sourceOf(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Source {
  const tank = tankOf(snapshot, batch)
  if (!tank) throw new Gap(`${batch.name}: say which tank it is in.`)
  const culture = culturesFeeding(snapshot, batch, day.date).find(({ kind }) => kind === 'rotifer')
  if (!culture) {
    const doubted = culturesLinked(snapshot, batch, day.date).find(({ kind }) => kind === 'rotifer')
    if (!doubted) throw new Gap(`${batch.name}: say which rotifer culture feeds it.`)
    throw new Gap(
      `${batch.name}: ${doubted.name} is in doubt and feeds nobody, and no other culture is counted. Look at ${doubted.name} again, or feed what you can get today.`,
    )
  }
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

/** What one feed asks for: the animals wanted, within what the water may hold. */
function feedPlan(
  known: Known,
  feed: Pick<TopUpPlan, 'round' | 'residual' | 'hours'> & { parameters: TopUpParameterValues },
): TopUpPlan {
  const { tank, culture, density, larvae, grazing } = known
  const { round, residual, hours, parameters } = feed
  const hoursUntilNextFeed = Math.min(48, hours.light + hours.dark)
  const topUp = preyTopUp({
    targetPerMl: parameters.targetPerMl,
    residualPerMl: residual.perMl,
    volumeL: tank.volumeL,
    ...(larvae === null ? {} : { larvae }),
    ...(grazing === null ? {} : { eatenPerLarvaPerHour: eatenPerLarvaPerHour(grazing, hours) }),
    hoursUntilNextFeed,
    densityOfCulturePerMl: density.densityPerMl,
    sievingLoss: parameters.sievingLoss,
  })
  const tankMl = tank.volumeL * 1000
  const roomFor = Math.max(0, (parameters.mostPerMl - residual.perMl) * tankMl)
  const perMlGiven = density.densityPerMl * (1 - parameters.sievingLoss)
  const cultureMl = Math.min(topUp.animalsToAdd, roomFor) / perMlGiven
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
    hours,
    topUp,
    animals: cultureMl * perMlGiven,
    cultureMl,
    boundedBy: null,
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
