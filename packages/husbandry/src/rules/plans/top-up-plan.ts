import { DEFAULT_SIEVING_LOSS, type Grazing, type PreyTopUp, preyTopUp } from '@fryward/live-feed'
import { elapsedDays, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, fromMemory, type Parameters, published } from '../../engine/parameters.ts'
import { Gap } from '../../engine/rule.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture, SnapshotTank } from '../../snapshot.ts'
import { batchNumbers } from '../../state/batch-state.ts'
import { type CultureDensity, densityAt } from '../../state/culture-state.ts'
import { culturesFeeding } from '../../state/feed-links.ts'
import { grazingOf, type PreyCount, preyCounts, preyFeedings } from '../../state/grazing.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { rememberedBySnapshot } from '../../state/memo.ts'
import { type DayRound, roundOfInstant, spreadRounds } from '../rounds.ts'

export const preyTopUpId = 'larval-prey-top-up'

/** Parameters of the top-up rule; here because count and harvest follow the same feeds. */
export const topUpParameters = {
  feedsPerDay: {
    type: 'number',
    label: 'a day',
    unit: 'feeds',
    default: 2,
    minimum: 1,
    maximum: 8,
    source: commonPractice('two or three; at least 2 in Treece & Davis 2000, SRAC Publication 701'),
  },
  targetPerMl: {
    type: 'number',
    label: 'rotifers to keep',
    unit: 'per_mL',
    default: 10,
    minimum: 0.5,
    maximum: 40,
    source: commonPractice('5-10 per mL as used for A. clarkii larvae (methods of a larval experiment), upper end'),
  },
  refillUnderPerMl: {
    type: 'number',
    label: 'top up when under',
    unit: 'per_mL',
    default: 5,
    minimum: 0,
    maximum: 40,
    source: commonPractice('3 per mL in red drum: Treece & Davis 2000, SRAC Publication 701'),
  },
  mostPerMl: {
    type: 'number',
    label: 'at most',
    unit: 'per_mL',
    default: 15,
    minimum: 1,
    maximum: 60,
    source: fromMemory('usual target 5-15 per mL: Hoff 1996; Olivotto et al. 2011'),
  },
  sievingLoss: {
    type: 'number',
    label: 'lost in sieving',
    unit: 'share',
    default: DEFAULT_SIEVING_LOSS,
    minimum: 0,
    maximum: 0.5,
    source: published('Attramadal & Sandvand, rotifer cultivating method (Fish Farming Technology, Balkema)'),
  },
} satisfies Parameters

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
// No single day takes more than half of a culture. common practice
const mostOfCulture = 0.5

/** The rounds at which a batch is fed. */
export function preyFeedRounds(snapshot: RoomSnapshot, day: HusbandryDay): DayRound[] {
  const { parameters } = ruleInForce(snapshot, { id: preyTopUpId, isOnByDefault: true, parameters: topUpParameters })
  return spreadRounds(day, parameters.feedsPerDay)
}

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
  const { isOn, parameters } = ruleInForce(snapshot, {
    id: preyTopUpId,
    isOnByDefault: true,
    parameters: topUpParameters,
  })
  const diet = larvalDiet(batch, day.date)
  if (!isOn || diet?.isOnRotifers === false) return null
  if (!diet) throw new Gap(`${batch.name}: no profile of ${batch.species} says what its larvae eat.`)
  const tank = tankOf(snapshot, batch)
  if (!tank) throw new Gap(`${batch.name}: say which tank it is in.`)
  const culture = culturesFeeding(snapshot, batch, day.date).find(({ kind }) => kind === 'rotifer')
  if (!culture) throw new Gap(`${batch.name}: say which rotifer culture feeds it.`)
  const density = densityAt(snapshot, culture, { at: day.rounds[0]!.startsAt, until: day.endsAt })
  if (!density || density.densityPerMl <= 0)
    throw new Gap(`${batch.name} is fed from ${culture.name}: count ${culture.name}, and the amount follows.`)
  const rounds = preyFeedRounds(snapshot, day)
  const larvae = batchNumbers(snapshot, batch).now
  const grazing = grazingOf(snapshot, { batch, tank, prey: 'rotifers', until: day.endsAt })
  return rounds.map((round, index): TopUpPlan => {
    const residual = residualBefore(snapshot, batch, {
      day,
      rounds,
      index,
      assumedPerMl: parameters.refillUnderPerMl,
    })
    const hoursUntilNextFeed = hoursBetween(round, rounds[index + 1], { day, rounds })
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
    const wanted = Math.min(topUp.animalsToAdd, roomFor)
    const perMlGiven = density.densityPerMl * (1 - parameters.sievingLoss)
    const mostMl = (mostOfCulture * culture.volumeL * 1000) / rounds.length
    const cultureMl = Math.min(wanted / perMlGiven, mostMl)
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
      isBoundedByCulture: wanted / perMlGiven > mostMl,
      isNeeded:
        cultureMl > 0 &&
        (residual.kind !== 'counted' || residual.perMl - topUp.expectedGrazing / tankMl < parameters.refillUnderPerMl),
    }
  })
}

function residualBefore(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { day, rounds, index, assumedPerMl }: { day: HusbandryDay; rounds: DayRound[]; index: number; assumedPerMl: number },
): Residual {
  const about = { prey: 'rotifers', until: day.endsAt } as const
  const count = preyCounts(snapshot, batch, about).at(-1)
  const fed = preyFeedings(snapshot, batch, about).at(-1)
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
