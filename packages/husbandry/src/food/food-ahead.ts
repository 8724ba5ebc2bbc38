import type { FoodChange, PlainDate } from '@fryward/shared'
import { rotiferHarvestDefinition } from '../definitions/live-food/rotifer-harvest.ts'
import { topUpInForce } from '../plans/prey-feed-rounds.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { curesInForce } from '../state/cures.ts'
import { type ArtemiaAhead, artemiaAhead } from './artemia-ahead.ts'
import type { BatchLived } from './batch-lived.ts'
import { chilledAhead } from './chilled-ahead.ts'
import { copepodsBeside } from './copepods-beside.ts'
import type { CultureAhead } from './culture-ahead.ts'
import type { EaterAhead } from './eater-ahead.ts'
import { dayAhead, type FoodHorizon } from './food-days.ts'
import { type PairToAsk, pairsToAsk } from './hatches-ahead.ts'
import { needsAhead } from './needs.ts'
import { type CrashRecord, suppliesAhead } from './supplies.ts'
import { changedSupplies } from './supply-changes.ts'

/** The food of a room as one question: what cultures can give and who will want it, with some things changed. */
export type FoodAhead = {
  today: PlainDate
  days: number
  cultures: CultureAhead[]
  eaters: EaterAhead[]
  /** Share of a harvest that is lost in sieving it. */
  sievingLoss: number
  /** Backups may give what no other can. */
  mayUseBackups: boolean
  /** The chilled reserve may give what no culture can. */
  mayUseReserve: boolean
  /** Newly hatched Artemia that the batches of today want on each day, and what hatches give of it. */
  artemia: ArtemiaAhead
  /** Whose next clutch may be asked about. */
  pairs: PairToAsk[]
  gaps: string[]
}

/** What ended things tell that the room's state no longer holds. */
export type RoomRecord = CrashRecord & {
  /** Of batches that have ended. */
  lived: readonly BatchLived[]
}

export type FoodAsked = { horizon: FoodHorizon; changes: readonly FoodChange[]; record: RoomRecord }

/** What a room has chosen so that food lasts counts as done. */
export function foodAhead(snapshot: RoomSnapshot, { horizon, changes: asked, record }: FoodAsked): FoodAhead {
  const chosen = curesInForce(snapshot, dayAhead(snapshot, horizon, 0)).map(({ change }) => change)
  const changes = [...chosen, ...asked]
  const { eaters, gaps } = needsAhead(snapshot, { horizon, changes, lived: record.lived })
  const first = ruleInForce(snapshot, rotiferHarvestDefinition).parameters
  const standing = changedSupplies(suppliesAhead(snapshot, { horizon, record }), { changes, horizon, first })
  const cultures = [...standing, ...chilledAhead(snapshot, horizon)]
  const artemia = artemiaAhead(snapshot, horizon)
  const uncounted = cultures.filter(({ standing }) => standing === 'not_counted')
  return {
    today: horizon.today,
    days: horizon.days,
    cultures,
    eaters,
    sievingLoss: topUpInForce(snapshot).parameters.sievingLoss,
    mayUseBackups: changes.some(({ kind }) => kind === 'use_backups'),
    mayUseReserve: changes.some(({ kind }) => kind === 'use_reserve'),
    artemia,
    pairs: pairsToAsk(snapshot, dayAhead(snapshot, horizon, 0)),
    gaps: [
      ...uncounted.map(({ name }) => `${name}: count it, and what it can give follows.`),
      ...copepodsBeside(snapshot, [dayAhead(snapshot, horizon, 0), dayAhead(snapshot, horizon, 1)]),
      ...artemia.gaps,
      ...gaps,
    ],
  }
}
