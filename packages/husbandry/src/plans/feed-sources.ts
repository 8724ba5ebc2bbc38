import type { Id, Instant } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { Gap } from '../rule/gap.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { doubtAbout } from '../state/culture-doubt.ts'
import { type CultureDensity, densityAt } from '../state/culture-state.ts'
import { culturesLinked, feedersOf } from '../state/feed-links.ts'
import { batchOrder, orderedOf } from '../state/food-orders.ts'
import { setAsideFor } from '../state/set-aside.ts'

/** Harvested for a batch and not fed yet, as dense as the culture was when it was drawn: filling up thins the rest. */
export type SetAsideWater = { ml: number; density: CultureDensity }

/** A culture that a batch eats from on a day, as dense as it is by now. */
export type FeedSource = {
  culture: SnapshotCulture
  density: CultureDensity
  /** What the plan of the food says that the batch gets of it today; null without a plan. */
  order: { madeAt: Instant; volumeL: number } | null
  setAside: SetAsideWater | null
  /** Live rotifers that the plan gives of it; without a plan as many as are wanted. */
  planned: number
}

/**
 * The cultures that a batch's feeds of a day come from: as planned, or the first that is linked; and any of which something
 * stands harvested for it.
 * @throws Gap when none is said, counted or sound.
 */
export function feedSources(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): FeedSource[] {
  const feeders = feedersOf(snapshot, { batch, kind: 'rotifer', date: day.date })
  if (feeders.length === 0) throw noFeeder(snapshot, batch, day)
  const order = batchOrder(snapshot, batch, day.date)
  const source = (culture: SnapshotCulture): FeedSource => {
    const ordered = orderedOf(order, culture.id)
    return {
      culture,
      density: densityNow(snapshot, { batch, culture, day }),
      order: order && ordered && { madeAt: order.madeAt, volumeL: ordered.volumeL },
      setAside: setAsideOf(snapshot, { batch, culture, day }),
      planned: order ? (ordered?.animals ?? 0) : Number.POSITIVE_INFINITY,
    }
  }
  const others = snapshot.cultures.filter((each) => each.kind === 'rotifer' && !feeders.includes(each))
  const standing = others.filter(
    (culture) => setAsideFor(snapshot, batch, { culture, day }).ml > 0 && doubtAbout(snapshot, culture, day) === null,
  )
  return [...feeders, ...standing].map(source)
}

function noFeeder(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Gap {
  const doubted = culturesLinked(snapshot, batch, day.date).find(({ kind }) => kind === 'rotifer')
  if (!doubted) return new Gap(`Say which rotifer culture feeds ${batch.name}.`)
  return new Gap(
    `${batch.name}: ${doubted.name} is in doubt and feeds nobody, and no other culture is counted. Look at ${doubted.name} again, or feed what you can get today.`,
  )
}

type Asked = { batch: SnapshotBatch; culture: SnapshotCulture; day: HusbandryDay }

function densityNow(snapshot: RoomSnapshot, { batch, culture, day }: Asked): CultureDensity {
  const density = densityAt(snapshot, culture, { at: day.rounds[0]!.startsAt, until: day.endsAt })
  if (!density || density.densityPerMl <= 0)
    throw new Gap(`${batch.name} is fed from ${culture.name}: count ${culture.name}, and the amount follows.`)
  return density
}

function setAsideOf(snapshot: RoomSnapshot, { batch, culture, day }: Asked): SetAsideWater | null {
  const { ml, harvest } = setAsideFor(snapshot, batch, { culture, day })
  if (ml <= 0 || !harvest) return null
  const density = densityAt(snapshot, culture, { at: day.rounds[0]!.startsAt, until: harvest.at })
  return density && density.densityPerMl > 0 ? { ml, density } : null
}

type Dealt = { animals: number; cultureMl: number; isNeeded: boolean }

/**
 * Deals the feeds of a day out to the cultures, each feed to one of them: what stands harvested is fed first, then the culture
 * of which the plan has most left. `fed` says which culture a feed that was given came out of, as far as anybody said; null for
 * one still to be given.
 */
export function dealFeeds(sources: readonly FeedSource[]) {
  const plannedLeft = new Map(sources.map(({ culture, planned }) => [culture.id, planned]))
  const standsMl = new Map(sources.map(({ culture, setAside }) => [culture.id, setAside?.ml ?? 0]))
  const most = (left: ReadonlyMap<Id, number>) =>
    sources.reduce((best, each) => (left.get(each.culture.id)! > left.get(best.culture.id)! ? each : best))
  return <P extends Dealt>(fed: { fromCultureId: Id | null } | null, feedFrom: (source: FeedSource) => P): P => {
    const given = fed && sources.find(({ culture }) => culture.id === fed.fromCultureId)
    const standing = most(standsMl)
    const source = given || (!fed && standsMl.get(standing.culture.id)! > 0 ? standing : most(plannedLeft))
    const { id } = source.culture
    const plan = feedFrom(source)
    plannedLeft.set(id, plannedLeft.get(id)! - plan.animals)
    if (!fed && plan.isNeeded) standsMl.set(id, standsMl.get(id)! - plan.cultureMl)
    return plan
  }
}
