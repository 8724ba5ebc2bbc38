import type { Id } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { Gap } from '../rule/gap.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { batchOrder } from '../state/food-orders.ts'
import { measurableLDown } from '../task/measures.ts'
import { type CultureSupply, cultureSupply, isSound } from './culture-supply.ts'
import { type TopUpPlan, type Wanted, wantedBy, wantedOrNull } from './top-up-wanted.ts'

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
  const wanted = wantedBy(snapshot, batch, day)
  if (!wanted) return null
  const planned = batchOrder(snapshot, batch, day.date)?.share ?? 1
  const cultures = new Map(wanted.plans.map(({ culture }) => [culture.id, culture]))
  const bounds = new Map([...cultures].map(([id, culture]) => [id, boundOf(snapshot, { batch, culture, wanted, day })]))
  if ([...bounds.values()].every(({ share }) => share <= 0)) {
    const others = culturesWithMore(snapshot, [...cultures.keys()], day)
    throw nothingLeft(batch, { cultures: [...cultures.values()], bounds, others })
  }
  return wanted.plans.map((plan) => {
    const { share, by } = bounds.get(plan.culture.id)!
    const scale = Math.min(share, planned)
    if (scale === 1) return plan
    const boundedBy = share <= planned ? by : 'plan'
    return { ...plan, animals: plan.animals * scale, cultureMl: plan.cultureMl * scale, boundedBy, share: scale }
  })
}

// Less than a jug is not worth a second sieve. common practice
const worthDrawingL = 0.1

/** The share of its open feeds that a culture can give a batch, when all that eat from it share what is left fairly. */
type Bound = { share: number; by: CultureSupply['boundedBy'] }
type BoundAsked = { batch: SnapshotBatch; culture: SnapshotCulture; wanted: Wanted; day: HusbandryDay }

function boundOf(snapshot: RoomSnapshot, { batch, culture, wanted, day }: BoundAsked): Bound {
  const supply = cultureSupply(snapshot, culture, day)
  const by = supply.boundedBy
  const straight = (each: SnapshotBatch) => straightMlOf(snapshot, each, { culture, day })
  const straightMl = straightMlOfAll(snapshot, culture, day)
  const share = straightMl > 0 ? Math.min(1, (supply.leftL * 1000) / straightMl) : 1
  if (share === 1) return { share, by }
  const { setAsideMl, openMl } = wanted.byCulture.get(culture.id) ?? { setAsideMl: 0, openMl: 0 }
  if (openMl <= 0) return { share: 1, by }
  const mineMl = setAsideMl + straight(batch) * share
  return { share: Math.min(1, mineMl / openMl), by }
}

/**
 * The room's other sound rotifers that have litres left today beyond what their own eaters want, most first; a backup is
 * left alone.
 */
export function culturesWithMore(snapshot: RoomSnapshot, but: readonly Id[], day: HusbandryDay): Spare[] {
  return snapshot.cultures
    .filter(({ id, kind, isBackup }) => kind === 'rotifer' && !isBackup && !but.includes(id))
    .filter((culture) => isSound(snapshot, culture, day))
    .map((culture) => {
      const wantedMl = straightMlOfAll(snapshot, culture, day)
      return {
        culture,
        leftL: measurableLDown(Math.max(0, cultureSupply(snapshot, culture, day).leftL - wantedMl / 1000)),
      }
    })
    .filter(({ leftL }) => leftL >= worthDrawingL)
    .sort((a, b) => b.leftL - a.leftL || (a.culture.id < b.culture.id ? -1 : 1))
}

export type Spare = { culture: SnapshotCulture; leftL: number }

type NothingLeft = {
  cultures: readonly SnapshotCulture[]
  bounds: ReadonlyMap<Id, Bound>
  others: readonly Spare[]
}

function nothingLeft(batch: SnapshotBatch, { cultures, bounds, others }: NothingLeft): Gap {
  const names = cultures.map(({ name }) => name).join(' and ')
  const have = cultures.length > 1 ? 'have' : 'has'
  const from = others.length > 0 ? others.map(({ culture }) => culture.name).join(' or ') : 'another culture'
  const isFloor = cultures.every(({ id }) => bounds.get(id)?.by === 'floor')
  return new Gap(
    `${batch.name}: ${names} ${have} given all ${cultures.length > 1 ? 'they' : 'it'} can today${isFloor ? ` without falling under ${cultures.length > 1 ? 'their' : 'its'} floor` : ''}. Take rotifers from ${from} or the chilled reserve, or give Artemia sooner.`,
  )
}

/** Millilitres of a culture that a batch still wants today beyond what stands harvested for it; 0 when nobody can say. */
function straightMlOf(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { culture, day }: { culture: SnapshotCulture; day: HusbandryDay },
): number {
  const mine = wantedOrNull(snapshot, batch, day)?.byCulture.get(culture.id)
  return mine ? Math.max(0, mine.openMl - mine.setAsideMl) : 0
}

/** The same of all that eat from it, whether linked, planned or because something of it stands harvested for them. */
const straightMlOfAll = (snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): number =>
  livingBatches(snapshot).reduce((sum, batch) => sum + straightMlOf(snapshot, batch, { culture, day }), 0)

/** Litres of a culture that a batch's feeds of the day ask for; 0 when it cannot be worked out or is not on rotifers. */
export function rotiferNeedL(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { culture, day }: { culture: SnapshotCulture; day: HusbandryDay },
): number {
  try {
    const plans = topUpPlans(snapshot, batch, day) ?? []
    const mine = plans.filter((plan) => plan.isNeeded && plan.culture.id === culture.id)
    return mine.reduce((sum, { cultureMl }) => sum + cultureMl / 1000, 0)
  } catch (error) {
    // The batch's own top-up says what is missing; the culture is thinned all the same.
    if (error instanceof Gap) return 0
    throw error
  }
}
