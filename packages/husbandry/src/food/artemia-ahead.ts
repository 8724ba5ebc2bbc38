import { artemiaHatchPlan, DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import type { hatchStandings, Id, Instant } from '@fryward/shared'
import { addHours, addMinutes, elapsedHours } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import { artemiaHarvestDefinition } from '../definitions/live-food/artemia-harvest.ts'
import { artemiaStartDefinition } from '../definitions/live-food/artemia-start.ts'
import type { FactOf } from '../facts/fact.ts'
import { harvestRound, hatchedAt, hatchUnderWay, hatchVessels, keptHarvest } from '../plans/artemia-hatch.ts'
import { artemiaFeeds } from '../plans/artemia-need.ts'
import { artemiaStarts } from '../plans/artemia-starts.ts'
import { cystYield } from '../plans/cyst-yield.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { feedsFrom } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { factsUntil } from '../state/day-facts.ts'
import { dayAhead, eachDay, type FoodHorizon } from './food-days.ts'

/** Nauplii to count on: kept cold, still in their cone, or of cysts that the day's list asks for. */
export type HatchAhead = {
  id: string
  vessel: SnapshotCulture
  standing: (typeof hatchStandings)[number]
  readyAt: Instant
  /** So long they are food, in the cold. */
  goodUntil: Instant
  /** Alive once they are sieved. */
  nauplii: number
}

export type ArtemiaDay = {
  gives: { hatchId: string; batchId: Id; nauplii: number }[]
  batches: { batchId: Id; name: string; wanted: number; got: number }[]
}

export type ArtemiaAhead = { hatches: HatchAhead[]; days: ArtemiaDay[]; gaps: string[] }

/** Nauplii that batches want on the days ahead, and which hatch gives them: what is not given is still to be hatched. */
export function artemiaAhead(snapshot: RoomSnapshot, horizon: FoodHorizon): ArtemiaAhead {
  const today = dayAhead(snapshot, horizon, 0)
  const { hatches, gaps } = hatchesAhead(snapshot, today)
  const left = new Map(hatches.map(({ id, nauplii }) => [id, nauplii]))
  const days = eachDay(horizon, (day) => fedOn(snapshot, { day: dayAhead(snapshot, horizon, day), hatches, left }))
  return { hatches, days, gaps }
}

type Known = { perGram: number; dryPerWeighed: number; coldHours: number; enrichHours: number; handlingHours: number }

/** What a gram gives in this room, as it was seen to where somebody counted, and how long nauplii last. */
function known(snapshot: RoomSnapshot, today: HusbandryDay): Known {
  const { parameters } = ruleInForce(snapshot, artemiaStartDefinition)
  const { coldHours } = ruleInForce(snapshot, artemiaHarvestDefinition).parameters
  return {
    perGram: cystYield(snapshot, today)?.naupliiPerGram ?? parameters.naupliiPerGram,
    dryPerWeighed: parameters.cysts === 'drained_without_shells' ? 1 / parameters.wetPerDry : 1,
    coldHours,
    enrichHours: parameters.enrichHours,
    handlingHours: parameters.handlingHours,
  }
}

/** Every hatch that is food today or on a later day, the one that spoils first before the others. */
export function hatchesAhead(snapshot: RoomSnapshot, today: HusbandryDay): { hatches: HatchAhead[]; gaps: string[] } {
  const about = known(snapshot, today)
  const gaps: string[] = []
  const hatch = (vessel: SnapshotCulture, made: Made): HatchAhead[] => {
    const { grams, fed = 0, harvestAt, ...named } = made
    if (grams === undefined) {
      gaps.push(
        `${vessel.name}: nobody wrote down how many grams of cysts went in, so its nauplii are not counted on. Strike that start out and write it down again with its grams.`,
      )
      return []
    }
    const nauplii = Math.max(0, grams * about.perGram * (1 - DEFAULT_SIEVING_LOSS) - fed)
    const readyAt = addHours(harvestAt, hoursUntilFood(vessel, about))
    return nauplii > 0 ? [{ ...named, vessel, nauplii, readyAt, goodUntil: addHours(readyAt, about.coldHours) }] : []
  }
  const hatches = [
    ...hatchVessels(snapshot).flatMap((vessel) => [
      ...keptIn(snapshot, vessel, { today, about }).flatMap((made) => hatch(vessel, made)),
      ...underWayIn(snapshot, vessel, { today, about }).flatMap((made) => hatch(vessel, made)),
    ]),
    ...artemiaStarts(snapshot, today).flatMap(({ vessel, at, plan, feedDate }) =>
      hatch(vessel, {
        ...{ id: `${vessel.id} ${feedDate}`, standing: 'asked', grams: plan.cystsG },
        harvestAt: harvestRound(snapshot, hatchedAt(vessel, at)).at,
      }),
    ),
  ]
  return { hatches: hatches.sort((a, b) => (a.goodUntil < b.goodUntil ? -1 : a.goodUntil > b.goodUntil ? 1 : 0)), gaps }
}

/** A hatch by the dry weight of its cysts; undefined where nobody wrote it down. */
type Made = Pick<HatchAhead, 'id' | 'standing'> & { harvestAt: Instant; grams: number | undefined; fed?: number }
type About = { today: HusbandryDay; about: Known }

/** Enriched nauplii are food once they are enriched. */
function hoursUntilFood({ temperatureC }: SnapshotCulture, { enrichHours, handlingHours }: Known): number {
  if (enrichHours === 0) return 0
  const neededAt = '2000-01-01T00:00:00.000Z'
  const { harvestAt } = artemiaHatchPlan({ neededAt, nauplii: 1, temperatureC, enrichHours, handlingHours })
  return elapsedHours(harvestAt, neededAt) - handlingHours
}

/** As it stood when the day began, so that what is fed today does not move the day's own plan. */
function keptIn(snapshot: RoomSnapshot, vessel: SnapshotCulture, { today, about }: About): Made[] {
  const harvest = keptHarvest(snapshot, vessel, today)
  if (!harvest) return []
  const start = startsIn(snapshot, vessel, harvest.at).at(-1)
  const fed = feedsFrom(snapshot, vessel.id)
    .filter(({ at }) => at >= harvest.at && at < today.startsAt)
    .reduce((sum, { data }) => sum + (data.animals ?? 0), 0)
  return [{ id: harvest.id, standing: 'kept', harvestAt: harvest.at, grams: gramsOf(start, about), fed }]
}

function underWayIn(snapshot: RoomSnapshot, vessel: SnapshotCulture, { today, about }: About): Made[] {
  const start = hatchUnderWay(snapshot, vessel, today.endsAt)
  if (!start) return []
  const { at } = harvestRound(snapshot, hatchedAt(vessel, start.at))
  // What should have been out before comes out in today's first round.
  const harvestAt = at < today.startsAt ? firstRound(today).startsAt : at
  return [{ id: start.id, standing: 'under_way', harvestAt, grams: gramsOf(start, about) }]
}

const startsIn = (snapshot: RoomSnapshot, { id }: SnapshotCulture, until: Instant): FactOf<'care'>[] =>
  factsUntil(snapshot, 'care', { subjectId: id, until }).filter(({ data }) => data.act === 'start_artemia')

const gramsOf = (start: FactOf<'care'> | undefined, { dryPerWeighed }: Known): number | undefined =>
  start?.data.cystsG === undefined ? undefined : start.data.cystsG * dryPerWeighed

// They are sieved and rinsed in the round that feeds them.
const roundMinutes = 60

type Feeding = { day: HusbandryDay; hatches: readonly HatchAhead[]; left: Map<string, number> }

/** Each feed of a day takes of the hatches that are food at its hour, of what spoils first; feeds of one hour share alike. */
function fedOn(snapshot: RoomSnapshot, { day, hatches, left }: Feeding): ArtemiaDay {
  const feeds = livingBatches(snapshot).flatMap((batch) =>
    artemiaFeeds(snapshot, batch, day)
      .filter(({ nauplii }) => nauplii > 0)
      .map(({ round, nauplii }) => ({ batchId: batch.id, at: round.startsAt, nauplii, got: 0 })),
  )
  const gives = new Map<string, ArtemiaDay['gives'][number]>()
  for (const at of [...new Set(feeds.map((feed) => feed.at))].sort()) {
    const now = feeds.filter((feed) => feed.at === at)
    for (const { id, readyAt, goodUntil } of hatches) {
      if (addMinutes(readyAt, -roundMinutes) > at || goodUntil < at) continue
      const hungry = now.reduce((sum, { nauplii, got }) => sum + nauplii - got, 0)
      const share = hungry > 0 ? Math.min(1, left.get(id)! / hungry) : 0
      for (const feed of now) {
        const nauplii = share * (feed.nauplii - feed.got)
        if (nauplii <= 0) continue
        feed.got += nauplii
        left.set(id, Math.max(0, left.get(id)! - nauplii))
        const key = `${id} ${feed.batchId}`
        gives.set(key, { hatchId: id, batchId: feed.batchId, nauplii: (gives.get(key)?.nauplii ?? 0) + nauplii })
      }
    }
  }
  const sumOf = (batchId: Id, value: 'nauplii' | 'got') =>
    feeds.filter((feed) => feed.batchId === batchId).reduce((sum, feed) => sum + feed[value], 0)
  const fed = livingBatches(snapshot).filter(({ id }) => feeds.some(({ batchId }) => batchId === id))
  return {
    gives: [...gives.values()],
    batches: fed.map(({ id, name }) => ({ batchId: id, name, wanted: sumOf(id, 'nauplii'), got: sumOf(id, 'got') })),
  }
}
