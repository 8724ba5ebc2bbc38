import { DEFAULT_SIEVING_LOSS, preyTopUp } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { elapsedHours } from '../calendar/elapsed.ts'
import { addDays, type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import { liveFeedRounds } from '../calendar/light.ts'
import { type DayRound, roundOfInstant } from '../calendar/rounds.ts'
import { larvalArtemiaFeedDefinition } from '../definitions/larvae/larval-artemia-feed.ts'
import { larvalWeanDefinition } from '../definitions/larvae/larval-wean.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { artemiaLeft } from '../state/artemia-left.ts'
import { batchNumbers, livingBatches } from '../state/batch-state.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { isDoneInRound } from '../state/done-in-round.ts'
import { changedShare, grazingOf, type PreyCount, preyCounts, preyFeedings } from '../state/grazing.ts'
import { type LarvalDiet, larvalDiet, tankOf } from '../state/larval-diet.ts'
import { litDay } from '../state/tank-light.ts'
import { daysWeaned } from '../state/weaned.ts'
import { hatchTankFor, likelyInNight } from './hatch-tank-plan.ts'
import { hoursToNextFeed } from './prey-feed-rounds.ts'
import { artemiaSooner, lastDayOnRotifers } from './sooner-artemia.ts'

export type ArtemiaFeed = {
  round: DayRound
  tank: SnapshotTank
  diet: LarvalDiet
  targetPerMl: number
  /** The larvae that it is for, by the book; null while nobody has said, and the tank's litres speak alone. */
  larvae: number | null
  /** Under 1 while what they are weaned to takes over. */
  share: number
  count: PreyCount | null
  /** Per mL likely left of feeds before, where nobody has looked lately: what the looks so far say that they eat. */
  likelyLeft: number
  nauplii: number
}

// They are eaten within an hour or two: what was left at a feed is left at the next one at the most, and not after a night,
// or larvae that nobody looked at meanwhile would be fed nothing. common practice
const standInHours = 8

// Withheld for what is likely left, and no more: something is given each time, and whoever gives it looks. common practice
const mostWithheld = 0.75

// The age at which a larva eats as much as the parameter says (definition: Ma et al. 2013).
const fullAtDay = 20

const feedsKnown = rememberedBySnapshot<readonly ArtemiaFeed[]>()

/** What each Artemia feed of a day asks for; empty when a batch does not eat Artemia that day. */
export const artemiaFeeds = (snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): readonly ArtemiaFeed[] =>
  feedsKnown(snapshot, `${batch.id} ${day.date}`, () => feedsOf(snapshot, batch, day))

function feedsOf(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): ArtemiaFeed[] {
  const { isOn, parameters } = ruleInForce(snapshot, larvalArtemiaFeedDefinition)
  const diet = larvalDiet(batch, day.date)
  const tank = tankOf(snapshot, batch)
  if (!isOn || !diet || !tank || diet.day < Math.max(0, diet.species.feeding.artemiaFirstDay.value)) return []
  const share = artemiaShare(snapshot, { batch, diet, day, taperDays: parameters.taperDays })
  if (share <= 0) return []
  const { feedsPerDay: number, hoursBeforeDark } = parameters
  const rounds = liveFeedRounds(litDay(snapshot, tank, day.date), { number, hoursBeforeDark })
  const { now: larvae } = batchNumbers(snapshot, batch)
  const isSooner = artemiaSooner(snapshot, day) !== null
  const about = { prey: 'artemia', until: day.endsAt } as const
  const last = preyCounts(snapshot, batch, about).at(-1) ?? null
  const ateRotifers = diet.species.feeding.rotifersPerMl.value !== null
  const daysWithoutRotifers = diet.day - lastDayOnRotifers(diet.species, isSooner)
  const seenPerMlHour = seenEatenPerHour(snapshot, {
    ...{ batch, tank, larvae, day },
    haveRotifersEnded: ateRotifers && daysWithoutRotifers > 0 && daysWithoutRotifers <= newlyWithoutDays,
  })
  const lit = hoursToNextFeed(snapshot, { tank, rounds, day }).map(({ light }) => light)
  const targets = lit.map((hours, index) => {
    const shareOfDay = shareOfLight(lit, index)
    return (
      targetFor({ ...{ diet, tank, larvae, parameters, isSooner }, shareOfDay, eatenPerMl: seenPerMlHour * hours }) *
      share
    )
  })
  const fed = preyFeedings(snapshot, batch, about).at(-1)
  // What is found left at a feed is found again at the next one, where as much is given.
  const found = last && (!fed || last.fact.at >= fed.at) ? last : null
  return rounds.map((round, index) => {
    const targetPerMl = targets[index]!
    const seen = found && elapsedHours(found.fact.at, round.startsAt) < standInHours ? found : null
    const left = artemiaLeft(snapshot, { batch, tank, round, day })
    // What was found is found again where as much is given; where less was, they have eaten it since, and changed water took its part.
    const again = seen ? (left ?? seen.perMl * notChanged(snapshot, { batch, tank, since: seen.fact.at, day })) : null
    const count = seen && again !== null && again >= nearly * seen.perMl ? seen : null
    const likelyLeft = count ? 0 : (again ?? withheld(left, { last, targetPerMl, diet }))
    const { animalsToAdd } = preyTopUp({
      targetPerMl,
      residualPerMl: count?.perMl ?? likelyLeft,
      volumeL: tank.volumeL,
      hoursUntilNextFeed: 0,
    })
    return { round, tank, diet, targetPerMl, larvae, share, count, likelyLeft, nauplii: animalsToAdd }
  })
}

/** The part of a tank's water that is there since an instant. */
const notChanged = (
  snapshot: RoomSnapshot,
  { batch, tank, since, day }: { batch: SnapshotBatch; tank: SnapshotTank; since: Instant; day: HusbandryDay },
): number => 1 - Math.min(1, changedShare(snapshot, { batch, tank, from: since, to: day.endsAt }))

// Closer than that nobody sees. common practice
const nearly = 0.9

// A look by eye that finds fewer finds none. And then so much more is tried. common practice
const nonePerMl = 0.1
const triedMore = 1.25
// What was seen while they ate rotifers beside it says too little, until looks without any say more. common practice
const newlyWithoutDays = 2
// By dry weight: 0.31-0.85 ug (Yufera & Pascual 1989) against 1.6-2.4 ug (Vanhaecke & Sorgeloos 1980, from memory).
const naupliiPerRotifer = 0.58 / 2

/** What a feed stands for of what they eat by light until tomorrow's first; where none is lit, all alike. */
function shareOfLight(lit: readonly number[], index: number): number {
  const all = lit.reduce((sum, hours) => sum + hours, 0)
  return all > 0 ? lit[index]! / all : 1 / lit.length
}

/**
 * What a batch was seen to eat of Artemia in an hour of light, per mL; somewhat more where the last look found none, for
 * they may have eaten more. Where rotifers have just ended, what they ate of those comes on top. 0 while no two looks say.
 */
function seenEatenPerHour(
  snapshot: RoomSnapshot,
  of: {
    batch: SnapshotBatch
    tank: SnapshotTank
    larvae: number | null
    day: HusbandryDay
    haveRotifersEnded: boolean
  },
): number {
  const { batch, tank, larvae, day, haveRotifersEnded } = of
  // By the looks of the days before: cysts for today were weighed by those.
  const about = { prey: 'artemia', until: day.startsAt } as const
  const last = preyCounts(snapshot, batch, about).at(-1)
  const learned = grazingOf(snapshot, { batch, tank, ...about })
  if (larvae === null || !last || !learned?.light) return 0
  const rotifers = haveRotifersEnded ? grazingOf(snapshot, { ...about, batch, tank, prey: 'rotifers' })?.light : null
  const inTheirPlace = naupliiPerRotifer * (rotifers?.eatenPerLarvaPerHour ?? 0)
  const eaten = (larvae * (learned.light.eatenPerLarvaPerHour + inTheirPlace)) / (tank.volumeL * 1000)
  return haveRotifersEnded || last.perMl <= nonePerMl ? triedMore * eaten : eaten
}

/** Where nobody has looked lately: only where a whole feed and the species' most was left; of less they might have eaten more. */
function withheld(
  left: number | null,
  { last, targetPerMl, diet }: { last: PreyCount | null; targetPerMl: number; diet: LarvalDiet },
): number {
  const plentyPerMl = Math.max(targetPerMl, diet.species.feeding.artemiaPerMl.value.to)
  return left !== null && last && last.perMl >= plentyPerMl ? Math.min(mostWithheld * targetPerMl, left) : 0
}

/**
 * Nauplii per mL to start a feed with: what so many larvae eat, by the book or as they were seen to, never so thin that they
 * hunt in vain, never above the most; from a little on the first days of those that eat something else beside. By the litres
 * alone while nobody knows how many they are, or nauplii are their first food and no looks tell yet how much of it they take.
 */
function targetFor(of: {
  diet: LarvalDiet
  tank: SnapshotTank
  larvae: number | null
  /** Of what they eat in a day. */
  shareOfDay: number
  parameters: ParameterValues<typeof larvalArtemiaFeedDefinition.parameters>
  /** The room ends rotifers early: nauplii are all there is from the first on. */
  isSooner: boolean
  /** As seen, until the next feed. */
  eatenPerMl: number
}): number {
  const { diet, tank, larvae, shareOfDay, parameters, isSooner, eatenPerMl } = of
  const { artemiaFirstDay, artemiaPerMl } = diet.species.feeding
  const { from, to } = artemiaPerMl.value
  const isFirstFood = artemiaFirstDay.value <= 0
  const aDay = parameters.perLarvaPerDay * Math.min(1, diet.day / fullAtDay)
  const byNumber = larvae === null ? to : (larvae * aDay * shareOfDay) / (tank.volumeL * 1000)
  const wanted = Math.max(byNumber, eatenPerMl, isFirstFood && eatenPerMl === 0 ? to : 0)
  const isAtOnce = parameters.stretchDays === 0 || isSooner || isFirstFood
  const progress = isAtOnce ? 1 : Math.min(1, (diet.day - artemiaFirstDay.value) / parameters.stretchDays)
  return Math.min(parameters.mostPerMl, from + (Math.max(from, wanted) - from) * progress)
}

/** All of it until nearly all are weaned, then less each day; where nobody offers any, until the species' last day. */
function artemiaShare(
  snapshot: RoomSnapshot,
  of: { batch: SnapshotBatch; diet: LarvalDiet; day: HusbandryDay; taperDays: number },
): number {
  const { batch, diet, day, taperDays } = of
  if (!ruleInForce(snapshot, larvalWeanDefinition).isOn)
    return diet.day <= diet.species.feeding.weaningLastDay.value ? 1 : 0
  const weaned = daysWeaned(snapshot, batch, day)
  return weaned === null ? 1 : Math.max(0, 1 - weaned / taperDays)
}

/** The feeds of a day that still have something to ask, and all its rounds of Artemia. */
export function artemiaFeedsAsked(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  day: HusbandryDay,
): { rounds: DayRound[]; asked: ArtemiaFeed[] } {
  const feeds = artemiaFeeds(snapshot, batch, day)
  const rounds = feeds.map(({ round }) => round)
  const given = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day })
  const fed = given.filter(({ data }) => data.food === 'artemia')
  const asked = feeds.filter(({ round, nauplii }) => nauplii > 0 && !isDoneInRound(fed, { day, rounds, round }))
  return { rounds, asked }
}

/** Nauplii that feeds of a day will still take before an instant; one that was given takes none, by its task or without it. */
export function artemiaStillWanted(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { day, before }: { day: HusbandryDay; before: Instant },
): number {
  const { rounds, asked } = artemiaFeedsAsked(snapshot, batch, day)
  const given = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).filter(
    ({ data }) => data.food === 'artemia',
  )
  const givenIn = new Set(given.map(({ at }) => roundOfInstant(rounds, at)?.id))
  return asked
    .filter(({ round }) => round.startsAt < before && !givenIn.has(round.id))
    .reduce((sum, { nauplii }) => sum + nauplii, 0)
}

export type ArtemiaNeed = {
  of: Pick<SnapshotBatch, 'id' | 'name'>
  /** Larvae that are not there yet: the night before may bring them. */
  isAwaited: boolean
  feedsAt: readonly Instant[]
  nauplii: number
}

/** Nauplii that a day's feeds will take out of the hatch, what is lost in sieving included. */
export function artemiaNeeds(snapshot: RoomSnapshot, day: HusbandryDay): ArtemiaNeed[] {
  const ofBatches = livingBatches(snapshot).map((batch) => {
    const feeds = artemiaFeeds(snapshot, batch, day)
    const nauplii = feeds.reduce((sum, feed) => sum + feed.nauplii, 0)
    return { of: batch, isAwaited: false, feedsAt: feeds.map(({ round }) => round.startsAt), nauplii }
  })
  return [...ofBatches, ...awaitedNeeds(snapshot, day)]
    .filter(({ nauplii }) => nauplii > 0)
    .map((need) => ({ ...need, nauplii: need.nauplii / (1 - DEFAULT_SIEVING_LOSS) }))
    .sort((a, b) => a.of.name.localeCompare(b.of.name, 'en') || (a.of.id < b.of.id ? -1 : 1))
}

// Births are spread over many nights, none of them likely, and a gram of cysts is less than a brood. common practice
const worthCysts = 0.01

/** What young take that eat nauplii from their first morning on, if the night before brings them: cysts take a day. */
function awaitedNeeds(snapshot: RoomSnapshot, day: HusbandryDay): ArtemiaNeed[] {
  const { isOn, parameters } = ruleInForce(snapshot, larvalArtemiaFeedDefinition)
  const night = husbandryDay({ room: snapshot.room, date: addDays(day.date, -1) })
  if (!isOn) return []
  return likelyInNight(snapshot, night, worthCysts).flatMap(({ clutch, outlook }) => {
    const { artemiaFirstDay, artemiaPerMl } = outlook.species.feeding
    const tank = hatchTankFor(snapshot, clutch, night) ?? tankOf(snapshot, clutch)
    if (artemiaFirstDay.value > 0 || !tank) return []
    const { feedsPerDay: number, hoursBeforeDark } = parameters
    const rounds = liveFeedRounds(litDay(snapshot, tank, day.date), { number, hoursBeforeDark })
    const nauplii = artemiaPerMl.value.to * tank.volumeL * 1000 * rounds.length
    return [{ of: clutch, isAwaited: true, feedsAt: rounds.map(({ startsAt }) => startsAt), nauplii }]
  })
}
