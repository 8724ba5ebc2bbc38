import { type PreyTopUp, preyTopUp } from '@fryward/live-feed'
import type { Id } from '@fryward/shared'
import { elapsedDays } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, latestRoundOf, roundOfInstant } from '../calendar/rounds.ts'
import type { larvalPreyTopUpDefinition } from '../definitions/larvae/larval-prey-top-up.ts'
import type { FactOf } from '../facts/fact.ts'
import { Gap } from '../rule/gap.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { computedLink } from '../rule/why.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { batchNumbers } from '../state/batch-state.ts'
import type { CultureDensity } from '../state/culture-state.ts'
import {
  eatenPerLarvaPerHour,
  grazingOf,
  type LearnedGrazing,
  type PreyCount,
  preyCounts,
  preyFeedings,
} from '../state/grazing.ts'
import { larvalDiet, tankOf } from '../state/larval-diet.ts'
import { rotifersFed } from '../state/set-aside.ts'
import type { CultureSupply } from './culture-supply.ts'
import { dealFeeds, type FeedSource, feedSources, type SetAsideWater } from './feed-sources.ts'
import { hoursToNextFeed, preyFeedRounds, topUpInForce } from './prey-feed-rounds.ts'
import { artemiaSooner, lastDayOnRotifers } from './sooner-artemia.ts'

type TopUpParameterValues = ParameterValues<typeof larvalPreyTopUpDefinition.parameters>

/**
 * What is in the water before a feed: counted since the last feed; or the last count standing in until the next one;
 * or taken as the level at which one tops up, for want of a count; or nothing, before the first feed.
 */
export type Residual =
  | { kind: 'counted' | 'last-count'; perMl: number; count: PreyCount }
  | { kind: 'assumed' | 'none-fed'; perMl: number }

export type TopUpPlan = Pick<FeedSource, 'culture' | 'density' | 'order'> & {
  round: DayRound
  tank: SnapshotTank
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
  /** Of the culture, harvested for the batch today and not fed yet. */
  setAsideMl: number
  /** What keeps it from being all that is wanted: half of the culture in a day, its floor, or the plan; null when it is. */
  boundedBy: CultureSupply['boundedBy'] | 'plan' | null
  /** The part of what is wanted that it is; 1 when it is all. */
  share: number
  isNeeded: boolean
}

// The last count may stand in for the next for a day, no longer. common practice
const longestStandInDays = 1
// A feed of less than this part of the target is less than three counted samples can tell, and not worth a walk. common practice
const leastShareOfTarget = 0.05

/** What a batch's feeds would take of each of its cultures if that could give it all. */
export type Wanted = { plans: TopUpPlan[]; byCulture: ReadonlyMap<Id, { setAsideMl: number; openMl: number }> }

const remembered = rememberedBySnapshot<Wanted | null>()

/** As `wantedBy`; null too where that cannot be worked out, since the batch's own feeds say what is missing. */
export function wantedOrNull(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Wanted | null {
  return remembered(snapshot, `${batch.id} ${day.date}`, () => {
    try {
      return wantedBy(snapshot, batch, day)
    } catch (error) {
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

/**
 * What each feed of a day takes, and out of which culture; null when the batch does not eat rotifers that day.
 * @throws Gap when something is missing that somebody has to say first.
 */
export function wantedBy(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Wanted | null {
  const { isOn, parameters } = topUpInForce(snapshot)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || diet?.isOnRotifers === false) return null
  if (!diet)
    throw new Gap(`${batch.name}: what the larvae of its species eat is not known here. Feed them as you know them.`)
  const isSooner = artemiaSooner(snapshot, day) !== null
  if (isSooner && diet.day > lastDayOnRotifers(diet.species, isSooner)) return null
  const tank = tankOf(snapshot, batch)
  if (!tank) throw new Gap(`${batch.name}: say which tank it is in.`)
  const sources = feedSources(snapshot, batch, day)
  const rounds = preyFeedRounds(snapshot, tank, day)
  const about = { prey: 'rotifers', until: day.endsAt } as const
  const known: Known = {
    tank,
    larvae: batchNumbers(snapshot, batch).now,
    grazing: grazingOf(snapshot, { batch, tank, ...about }),
  }
  const water: Water = {
    count: preyCounts(snapshot, batch, about).at(-1),
    fed: preyFeedings(snapshot, batch, about).at(-1),
  }
  const given = rotifersFed(snapshot, batch, day)
  const fedIn = new Map(given.map(({ at, data }) => [roundOfInstant(rounds, at)?.id, data.fromCultureId]))
  // What was counted or fed in a later round speaks for the water since: a feed before it is past.
  const past = latestRoundOf(rounds, { day, at: [...given.map(({ at }) => at), water.count?.fact.at ?? day.startsAt] })
  const dealer = dealFeeds(sources)
  const hoursOf = hoursToNextFeed(snapshot, { tank, rounds, day })
  const plans = rounds.map((round, index) => {
    const residual = residualBefore(water, { day, rounds, index, assumedPerMl: parameters.refillUnderPerMl })
    const hours = hoursOf[index]!
    const fed = fedIn.has(round.id) ? { fromCultureId: fedIn.get(round.id) ?? null } : null
    return dealer(fed, (source) => {
      const plan = feedFrom(known, source, { round, residual, hours, parameters })
      return fed || round.startsAt >= past ? plan : { ...plan, animals: 0, cultureMl: 0, isNeeded: false }
    })
  })
  const open = plans.filter(({ round, isNeeded }) => isNeeded && !fedIn.has(round.id))
  const openMl = (id: Id) =>
    open.filter(({ culture }) => culture.id === id).reduce((sum, each) => sum + each.cultureMl, 0)
  const byCulture = sources.map(({ culture: { id }, setAside }): [Id, { setAsideMl: number; openMl: number }] => [
    id,
    { setAsideMl: setAside?.ml ?? 0, openMl: openMl(id) },
  ])
  return { plans, byCulture: new Map(byCulture) }
}

/** A feed out of one culture, of what stands harvested of it first. */
function feedFrom(known: Known, source: FeedSource, feed: Feed): TopUpPlan {
  const { setAside, density } = source
  if (!setAside) return feedPlan(known, source, feed)
  const asHarvested = feedPlan(known, { ...source, density: setAside.density }, feed)
  if (asHarvested.cultureMl <= setAside.ml) return asHarvested
  return feedPlan(known, { ...source, density: mixed(setAside, density, asHarvested.cultureMl) }, feed)
}

type Known = Pick<TopUpPlan, 'tank' | 'larvae' | 'grazing'>
type Water = { count: PreyCount | undefined; fed: FactOf<'feeding'> | undefined }
type Feed = Pick<TopUpPlan, 'round' | 'residual' | 'hours'> & { parameters: TopUpParameterValues }

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

/** What one feed asks for: the animals wanted, within what the water may hold. */
function feedPlan(known: Known, source: FeedSource, feed: Feed): TopUpPlan {
  const { tank, larvae, grazing } = known
  const { culture, density, order, setAside } = source
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
  const eatenPerMl = topUp.expectedGrazing / tankMl
  const roomFor = Math.max(0, (mostInWater(parameters, eatenPerMl) - residual.perMl) * tankMl)
  const perMlGiven = density.densityPerMl * (1 - parameters.sievingLoss)
  const cultureMl = Math.min(topUp.animalsToAdd, roomFor) / perMlGiven
  const isWorthIt = cultureMl * perMlGiven >= leastShareOfTarget * parameters.targetPerMl * tankMl
  const leftPerMl = residual.perMl - eatenPerMl
  // Until counts show what they eat, what is enough for feeds spread over day and night is too little for a longer light.
  const longer = grazing?.light ? 1 : Math.max(1, (hours.light * parameters.feedsPerDay) / 24)
  const enoughPerMl = Math.min(parameters.targetPerMl, parameters.refillUnderPerMl * longer)
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
    setAsideMl: setAside?.ml ?? 0,
    order,
    boundedBy: null,
    share: 1,
    isNeeded: isWorthIt && (residual.kind !== 'counted' || leftPerMl < enoughPerMl),
  }
}

/** Rotifers per mL that the water may hold after a feed: more where so many will be gone that too few would be left of the usual most. */
const mostInWater = (
  { mostPerMl, mostWhenEatenPerMl, refillUnderPerMl }: TopUpParameterValues,
  eatenPerMl: number,
): number => Math.max(mostPerMl, Math.min(mostWhenEatenPerMl, eatenPerMl + refillUnderPerMl))

// Gone an hour before the next feed is as good as lasting: a count is no surer. common practice
const goneLongBeforeHours = 1

/**
 * After how many hours of light the water of a feed will be empty, and how long before the next feed that is; null where it
 * lasts as good as until then, or nobody knows what they eat or what is left.
 */
export function goneBeforeNextFeed(plan: TopUpPlan): { afterHours: number; beforeHours: number } | null {
  const { residual, animals, tank, larvae, grazing, hours } = plan
  const isKnown = residual.kind === 'counted' || residual.kind === 'none-fed'
  const eatenPerHour = (larvae ?? 0) * (grazing?.light?.eatenPerLarvaPerHour ?? 0)
  if (!isKnown || eatenPerHour <= 0) return null
  const afterHours = (residual.perMl * tank.volumeL * 1000 + animals) / eatenPerHour
  const beforeHours = hours.light - afterHours
  return beforeHours > goneLongBeforeHours ? { afterHours, beforeHours } : null
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
