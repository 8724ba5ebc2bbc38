import type { FoodChange } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { larvalShare } from '../plans/larval-change-plan.ts'
import { rotifersAsked } from '../plans/top-up-wanted.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { batchNumbers, livingBatches } from '../state/batch-state.ts'
import { culturesLinked } from '../state/feed-links.ts'
import { dayOfLife, hasBegunToFeed, larvalDiet, tankOf } from '../state/larval-diet.ts'
import { type BatchLived, livedToday } from './batch-lived.ts'
import type { EaterAhead } from './eater-ahead.ts'
import { dateOnDay, dayAhead, eachDay, type FoodHorizon } from './food-days.ts'
import { clutchesAhead, type SpawningAhead, spawningsAhead } from './hatches-ahead.ts'
import { clutchAhead, spawningAhead, spawnsTonight } from './hatching-eaters.ts'
import { drawSurvival, shareLeft, survivalAhead } from './larvae-ahead.ts'
import { appetites, drawn, keptLarvae, largestEmptyTankL, lastRotiferDay, type NeedBasis } from './need-basis.ts'
import { doubtOf, rotiferHabits, rotifersWanted } from './rotifer-need.ts'

// No larva of a species here eats rotifers for so long.
const mostDaysOfLife = 100

/**
 * Who will want how many rotifers on each day, in seeded futures: the batches of today as they dwindle, clutches as their
 * nights fall, and clutches that pairs are to lay and that may be raised.
 */
export function needsAhead(
  snapshot: RoomSnapshot,
  { horizon, changes, lived }: { horizon: FoodHorizon; changes: readonly FoodChange[]; lived: readonly BatchLived[] },
): { eaters: EaterAhead[]; gaps: string[] } {
  const today = dayAhead(snapshot, horizon, 0)
  // Larvae still to come go into a tank for larvae.
  const habits = rotiferHabits(
    snapshot,
    snapshot.tanks.find(({ kind }) => kind === 'larval'),
    today,
  )
  if (!habits) return { eaters: [], gaps: [] }
  const about: NeedBasis = {
    snapshot,
    horizon,
    changes,
    habits,
    appetiteIn: appetites(snapshot, today),
    lived: [...lived, ...livedToday(snapshot, horizon.today)],
    emptyTankL: largestEmptyTankL(snapshot),
    changedShares: Array.from({ length: mostDaysOfLife }, (_, life) => larvalShare(snapshot, life)),
  }
  const { clutches, gaps } = clutchesAhead(snapshot, today)
  const left = new Set(changes.flatMap((change) => (change.kind === 'leave_clutch' ? [change.clutchId] : [])))
  const eaters = [
    ...livingBatches(snapshot).flatMap((batch) => batchAhead(about, batch, today)),
    ...clutches.filter(({ clutch }) => !left.has(clutch.id)).map((each) => clutchAhead(about, each)),
    ...changes.flatMap((change) => (change.kind === 'pair_spawns' ? spawnsTonight(about, change.pairId, today) : [])),
    ...spawningsAhead(snapshot, today)
      .flatMap((each) => [each, ...asMoreToo(each, changes)])
      .flatMap((each) => spawningAhead(about, each)),
  ]
  return { eaters: eaters.filter(({ futures }) => futures.some((future) => future.some((each) => each > 0))), gaps }
}

/** Pairs more that lay as this one does; nobody knows yet on which day of their interval they stand. */
function asMoreToo(like: SpawningAhead, changes: readonly FoodChange[]): SpawningAhead[] {
  const { pair, interval } = like
  const most = Math.max(1, Math.round(interval.medianDays))
  const nextDays = Array.from({ length: most }, (_, day) => ({ day, probability: 1 / most }))
  const asked = changes.filter((change) => change.kind === 'another_pair' && change.likePairId === pair.id)
  return asked.map((_, index) => ({
    ...like,
    key: `another ${index + 1} ${pair.id}`,
    name: `another pair like ${pair.name}`,
    nextDays,
  }))
}

function batchAhead(about: NeedBasis, batch: SnapshotBatch, today: HusbandryDay): EaterAhead[] {
  const { snapshot, horizon } = about
  const diet = larvalDiet(batch, horizon.today)
  const tank = tankOf(snapshot, batch)
  const habits = rotiferHabits(snapshot, tank, today)
  if (!diet || !tank || !habits) return []
  const now = batchNumbers(snapshot, batch).now
  const appetite = about.appetiteIn(batch)
  const kept = keptLarvae(about, [batch.id, ...batch.clutchIds])
  const lastDay = lastRotiferDay(about, diet.species)
  const askedToday = kept === Number.POSITIVE_INFINITY ? rotifersAsked(snapshot, batch, today) : null
  const survivals = survivalAhead(batch.species, about.lived)
  const futures = drawn(about, `batch ${batch.id}`, (random) => {
    const survival = drawSurvival(survivals, random)
    const hungrier = Math.exp(doubtOf(appetite) * random.normal())
    return eachDay(horizon, (day) => {
      const life = dayOfLife(batch, dateOnDay(horizon, day))
      if (!hasBegunToFeed(diet.species, life) || life > lastDay) return 0
      if (day === 0 && askedToday !== null) return askedToday
      const dwindled = shareLeft(life, survival) / shareLeft(diet.day, survival)
      const larvae = now === null ? null : Math.min(kept, now) * dwindled
      const changedShare = about.changedShares[life] ?? 0
      const mouths = {
        volumeL: tank.volumeL,
        larvae,
        isFirstDay: life === diet.species.feeding.firstFeedDay.value,
        changedShare,
      }
      return hungrier * rotifersWanted(habits, appetite, mouths)
    })
  })
  const fedFrom = culturesLinked(snapshot, batch, horizon.today).flatMap(({ id, kind }) =>
    kind === 'rotifer' ? [id] : [],
  )
  const larvae = now === null ? null : Math.min(kept, now)
  return [
    { id: batch.id, kind: 'larval_batch', subjectId: batch.id, name: batch.name, larvae, nights: [], futures, fedFrom },
  ]
}
