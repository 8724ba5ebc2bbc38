import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters, published } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../../snapshot.ts'
import { daysSince, factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { measurableL } from '../measures.ts'

export const larvalChangeId = 'larval-water-change'
export const tankChangeId = 'tank-water-change'

export const larvalChangeParameters = {
  fromDay: {
    type: 'number',
    label: 'old at the first change',
    unit: 'days',
    default: 3,
    minimum: 0,
    maximum: 30,
    source: commonPractice('left alone for the first days'),
  },
  firstShare: {
    type: 'number',
    label: 'at first',
    unit: 'share',
    default: 0.2,
    minimum: 0.02,
    maximum: 1,
    source: published('20 % a day rising to 100 % with age, A. clarkii larvae (methods of a larval experiment)'),
  },
  moreEachDay: {
    type: 'number',
    label: 'more each day',
    unit: 'share',
    default: 0.02,
    minimum: 0,
    maximum: 0.2,
    source: commonPractice('slower than published, to what a small room mixes'),
  },
  mostShare: {
    type: 'number',
    label: 'at most',
    unit: 'share',
    default: 0.5,
    minimum: 0.05,
    maximum: 1,
    source: commonPractice('half a day by hand'),
  },
} satisfies Parameters

export const tankChangeParameters = {
  everyDays: {
    type: 'number',
    label: 'from one change to the next',
    unit: 'days',
    default: 7,
    minimum: 1,
    maximum: 60,
    source: published('weekly in a pair’s tank (50 %): Dhaneesh et al. 2012, A. akallopisos'),
  },
  share: {
    type: 'number',
    label: 'of the water',
    unit: 'share',
    default: 0.1,
    minimum: 0.02,
    maximum: 0.5,
    source: commonPractice('a tenth a week where a filter runs'),
  },
} satisfies Parameters

export type ChangePlan = { tank: SnapshotTank; share: number; litres: number }

/** Water to change for a batch of larvae on a day, by its age; null when none is due or it has been done. */
export function larvalChange(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): ChangePlan | null {
  const rule = { id: larvalChangeId, isOnByDefault: true, parameters: larvalChangeParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  const diet = larvalDiet(batch, day.date)
  const tank = tankOf(snapshot, batch)
  if (!isOn || !diet || !tank || diet.day < parameters.fromDay) return null
  const changedToday = [tank.id, batch.id].some((subjectId) =>
    factsOnDay(snapshot, 'water_change', { subjectId, day }).some(({ data }) => data.removedL > 0),
  )
  if (changedToday) return null
  const { firstShare, moreEachDay, mostShare } = parameters
  const share = Math.min(mostShare, firstShare + (diet.day - parameters.fromDay) * moreEachDay)
  return { tank, share, litres: measurableL(tank.volumeL * share) }
}

/** Tanks that hold grown or growing fish: their water is changed by the calendar. */
const changedByCalendar = ['broodstock', 'grow_out', 'quarantine'] as const

export function tankChange(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): ChangePlan | null {
  const rule = { id: tankChangeId, isOnByDefault: true, parameters: tankChangeParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  if (!isOn || !changedByCalendar.some((kind) => kind === tank.kind)) return null
  const last = factsUntil(snapshot, 'water_change', { subjectId: tank.id, until: day.endsAt }).findLast(
    ({ data }) => data.removedL > 0,
  )
  const since = daysSince(snapshot, last, day.date)
  // A change planned for tomorrow is one that falls due tomorrow: the day's own facts are all that count.
  if (since !== null && since < parameters.everyDays) return null
  return { tank, share: parameters.share, litres: measurableL(tank.volumeL * parameters.share) }
}
