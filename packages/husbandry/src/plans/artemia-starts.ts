import { artemiaHatchPlan, type HatchPlan } from '@fryward/live-feed'
import type { Instant, PlainDate } from '@fryward/shared'
import { addMinutes, elapsedHours, laterOf } from '../calendar/elapsed.ts'
import { addDays, daysBetween, type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, firstRound, lastRound, roundOfInstant, roundsInOrder } from '../calendar/rounds.ts'
import { artemiaStartDefinition } from '../definitions/live-food/artemia-start.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { dateOf, factsUntil } from '../state/day-facts.ts'
import { harvestRound, hatchedAt, hatchUnderWay, hatchVessels, slowLotHours } from './artemia-hatch.ts'
import { type ArtemiaNeed, artemiaNeeds } from './artemia-need.ts'
import { type CystYield, cystYield } from './cyst-yield.ts'

export type ArtemiaStart = {
  vessel: SnapshotCulture
  round: DayRound
  /** When the cysts go in: with the round, or once the vessel is free. */
  at: Instant
  feedDate: PlainDate
  needs: ArtemiaNeed[]
  nauplii: number
  plan: HatchPlan
  /** Hours after the first feed of that day until they are out; 0 when they are there in time. */
  lateHours: number
  /** True when they are late because every vessel is still at work: one more would have them there in time. */
  isShortOfVessels: boolean
  /** What a gram was seen to give in this room; null where nobody has counted. */
  seen: CystYield | null
}

type Values = ParameterValues<typeof artemiaStartDefinition.parameters>
type Place = { vessel: SnapshotCulture; plan: HatchPlan; wantedAt: Instant; at: Instant; freeAt: Instant }

// The longest hatch and enrichment together are under three days.
const mostDaysAhead = 3
// The hour of a round: they are sieved and rinsed in the round that feeds them.
const roundMinutes = 60

const remembered = rememberedBySnapshot<ArtemiaStart[]>()

/**
 * The cysts that a day puts into water, and where: for each day of feeds ahead that none were started for, in the last round
 * from which they are out in time, in a vessel that is empty then; as soon as one is where none is. Nothing is begun
 * that would come out after the day's last feed.
 */
export function artemiaStarts(snapshot: RoomSnapshot, day: HusbandryDay): ArtemiaStart[] {
  return remembered(snapshot, day.date, () => workOut(snapshot, day))
}

function workOut(snapshot: RoomSnapshot, day: HusbandryDay): ArtemiaStart[] {
  const { isOn, parameters } = ruleInForce(snapshot, artemiaStartDefinition)
  const vessels = isOn ? hatchVessels(snapshot) : []
  if (vessels.length === 0) return []
  const seen = cystYield(snapshot, day)
  const freeAt = new Map(vessels.map((vessel) => [vessel.id, emptyAt(snapshot, vessel, day)]))
  const served = servedDates(snapshot, vessels, day)
  const starts: ArtemiaStart[] = []
  for (let ahead = 1; ahead <= mostDaysAhead; ahead += 1) {
    const feedDate = addDays(day.date, ahead)
    if (served.has(feedDate)) continue
    const found = startFor(snapshot, { day, feedDate, vessels, freeAt, parameters, seen })
    if (!found) continue
    starts.push(found)
    freeAt.set(found.vessel.id, harvestRound(snapshot, hatchedAt(found.vessel, found.at)).at)
  }
  return starts
}

/** When a vessel is empty: now, or with the harvest of what is in it; what should have been out long ago, today. */
function emptyAt(snapshot: RoomSnapshot, vessel: SnapshotCulture, day: HusbandryDay): Instant {
  const start = hatchUnderWay(snapshot, vessel, day.endsAt)
  if (!start) return day.startsAt
  const { at } = harvestRound(snapshot, hatchedAt(vessel, start.at))
  return at < day.startsAt ? firstRound(day).startsAt : at
}

/** Days of feeds that cysts have been started for, as they were kept; without a date, the day on which they are out. */
function servedDates(snapshot: RoomSnapshot, vessels: readonly SnapshotCulture[], day: HusbandryDay): Set<PlainDate> {
  const dates = vessels.flatMap((vessel) =>
    factsUntil(snapshot, 'care', { subjectId: vessel.id, until: day.endsAt })
      .filter(({ at, data }) => data.act === 'start_artemia' && isRecent(snapshot, at, day))
      .map(({ at, data }) => data.forDate ?? dateOf(snapshot, hatchedAt(vessel, at))),
  )
  return new Set(dates)
}

const isRecent = (snapshot: RoomSnapshot, at: Instant, day: HusbandryDay): boolean =>
  daysBetween(dateOf(snapshot, at), day.date) <= mostDaysAhead + 1

type Asked = {
  day: HusbandryDay
  feedDate: PlainDate
  vessels: readonly SnapshotCulture[]
  freeAt: ReadonlyMap<string, Instant>
  parameters: Values
  seen: CystYield | null
}

function startFor(snapshot: RoomSnapshot, asked: Asked): ArtemiaStart | null {
  const { day, feedDate, vessels, seen, parameters } = asked
  const feedDay = husbandryDay({ room: snapshot.room, date: feedDate })
  const needs = artemiaNeeds(snapshot, feedDay)
  const nauplii = needs.reduce((sum, need) => sum + need.nauplii, 0)
  const feeds = needs.flatMap(({ feedsAt }) => feedsAt).sort()
  const [firstFeed, lastFeed] = [feeds[0], feeds.at(-1)]
  if (nauplii <= 0 || !firstFeed || !lastFeed) return null
  const places = vessels
    .map((vessel) =>
      placeIn(snapshot, vessel, { ...asked, nauplii: nauplii * (1 + parameters.spare), neededAt: firstFeed }),
    )
    .sort((a, b) => (soonest(a) < soonest(b) ? -1 : soonest(a) > soonest(b) ? 1 : 0))
  const place = places[0]
  if (!place || place.at < day.startsAt || place.at >= day.endsAt) return null
  const outAt = hatchedAt(place.vessel, place.at)
  if (outAt > lastFeed) return null
  const rounds = roundsInOrder(day)
  const lateHours = Math.max(0, elapsedHours(firstFeed, addMinutes(outAt, -roundMinutes)))
  return {
    ...{ vessel: place.vessel, plan: place.plan, feedDate, needs, nauplii, seen },
    round: roundOfInstant(rounds, place.at) ?? firstRound(day),
    at: place.at,
    lateHours,
    isShortOfVessels: lateHours > 0 && places.every((each) => isAtWork(snapshot, each, day)),
  }
}

/** Whether a vessel is or was full when cysts should go in: one that stood empty then has only been forgotten. */
const isAtWork = (snapshot: RoomSnapshot, { vessel, freeAt, wantedAt }: Place, day: HusbandryDay): boolean =>
  freeAt > wantedAt && (freeAt > day.startsAt || hatchUnderWay(snapshot, vessel, wantedAt) !== null)

/** First where they can be soonest; of two alike, where nothing has to come out before. */
const soonest = ({ at, freeAt }: Place): string => `${at} ${freeAt}`

/** When cysts go into a vessel so that they are out for a feed: the round that is early enough, once it is free. */
function placeIn(
  snapshot: RoomSnapshot,
  vessel: SnapshotCulture,
  asked: Asked & { nauplii: number; neededAt: Instant },
): Place {
  const { day, parameters, seen } = asked
  const { enrichHours, handlingHours } = parameters
  const naupliiPerGram = seen?.naupliiPerGram ?? parameters.naupliiPerGram
  const plan = artemiaHatchPlan({
    neededAt: asked.neededAt,
    nauplii: asked.nauplii,
    temperatureC: vessel.temperatureC,
    ...{ naupliiPerGram, enrichHours, handlingHours },
    vesselL: vessel.volumeL,
  })
  const latestAt = addMinutes(plan.startAt, roundMinutes - slowLotHours(vessel) * 60)
  const wantedAt = roundUntil(snapshot, latestAt).startsAt
  const freeAt = asked.freeAt.get(vessel.id) ?? day.startsAt
  // What should have been begun before today is begun with its first round.
  const earliest = wantedAt < day.startsAt ? firstRound(day).startsAt : wantedAt
  return { vessel, plan, wantedAt, freeAt, at: laterOf(freeAt, earliest) }
}

/** The last round that begins by an instant, if need be on the evening before. */
function roundUntil(snapshot: RoomSnapshot, at: Instant): DayRound {
  const date = dateOf(snapshot, at)
  const day = husbandryDay({ room: snapshot.room, date })
  const before = husbandryDay({ room: snapshot.room, date: addDays(date, -1) })
  return roundsInOrder(day).findLast(({ startsAt }) => startsAt <= at) ?? lastRound(before)
}
