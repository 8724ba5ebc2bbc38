import type { Food, Id } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { feedersOf } from '../state/feed-links.ts'
import { larvalDiet } from '../state/larval-diet.ts'
import { vesselToFeedFrom } from './artemia-hatch.ts'
import { artemiaFeeds } from './artemia-need.ts'
import { copepodHarvest } from './copepod-plan.ts'

/** One live food of a batch on a day, and the culture or hatch vessel that it comes from. */
export type FeedToday = { batchId: Id; cultureId: Id; food: Food }

/** Who eats from what on a day: what was given already, and what the day's list still asks for. */
export function feedsToday(snapshot: RoomSnapshot, day: HusbandryDay): FeedToday[] {
  const feeds = livingBatches(snapshot).flatMap((batch) => [
    ...given(snapshot, batch, day),
    ...rotifers(snapshot, batch, day),
    ...nauplii(snapshot, batch, day),
  ])
  return [...new Map([...feeds, ...copepods(snapshot, day)].map((feed) => [Object.values(feed).join(), feed])).values()]
}

const given = (snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): FeedToday[] =>
  factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).flatMap(({ data: { food, fromCultureId } }) =>
    fromCultureId === undefined ? [] : [{ batchId: batch.id, cultureId: fromCultureId, food }],
  )

function rotifers(snapshot: RoomSnapshot, batch: SnapshotBatch, { date }: HusbandryDay): FeedToday[] {
  if (larvalDiet(batch, date)?.isOnRotifers !== true) return []
  return feedersOf(snapshot, { batch, kind: 'rotifer', date }).map(({ id }) => ({
    ...{ batchId: batch.id, cultureId: id, food: 'rotifers' as const },
  }))
}

/** Nobody says which cone feeds whom: all eat of the one whose nauplii are food that day. */
function nauplii(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): FeedToday[] {
  const isFed = artemiaFeeds(snapshot, batch, day).some((feed) => feed.nauplii > 0)
  const vessel = isFed ? vesselToFeedFrom(snapshot, day) : null
  return vessel ? [{ batchId: batch.id, cultureId: vessel.id, food: 'artemia' }] : []
}

const copepods = (snapshot: RoomSnapshot, day: HusbandryDay): FeedToday[] =>
  snapshot.cultures.flatMap((culture) =>
    (copepodHarvest(snapshot, culture, day)?.eaters ?? []).map(({ batch: { id } }) => ({
      ...{ batchId: id, cultureId: culture.id, food: 'copepods' as const },
    })),
  )
