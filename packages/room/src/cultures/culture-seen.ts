import {
  addMinutes,
  type CultureRecord,
  cultureHistory,
  cultureRecord,
  factsOf,
  type RoomSnapshot,
  type SnapshotCulture,
} from '@fryward/husbandry'
import { backtestCulture, type CultureEstimate, type CultureHistory } from '@fryward/live-feed'
import type { CultureOutlook, Instant } from '@fryward/shared'

// Two counts are the fewest that show a growth rate.
const fewestCounts = 2

/** What was seen of a culture up to an instant; its history is null where no growth can be worked out from it. */
export type CultureSeen = {
  seen: Pick<CultureOutlook, 'counts' | 'harvests'>
  record: CultureRecord
  history: CultureHistory | null
}

export function cultureSeen(snapshot: RoomSnapshot, culture: SnapshotCulture, at: Instant): CultureSeen {
  const record = cultureRecord(snapshot, culture, { until: addMinutes(at, 1) })
  const history = growsByKnownRates(culture) ? cultureHistory(record, culture) : null
  return {
    seen: { counts: countsOf(record), harvests: harvestsOf(snapshot, culture, { from: record.startedAt, to: at }) },
    record,
    history: history && history.observations.length >= fewestCounts ? history : null,
  }
}

/** Growth rates are known of rotifers only; of anything else the counts speak for themselves. */
export const growsByKnownRates = ({ kind }: Pick<SnapshotCulture, 'kind'>): boolean => kind === 'rotifer'

/** What was expected before each count, from the counts before it alone. */
export function behindOf(
  { record, history }: { record: CultureRecord; history: CultureHistory },
  estimate: CultureEstimate,
): CultureOutlook['behind'] {
  return backtestCulture(history, estimate.parameters).map(({ day, lower80PerMl, predictedPerMl, upper80PerMl }) => ({
    at: addMinutes(record.startedAt, day * 1440),
    p10: lower80PerMl,
    p50: predictedPerMl,
    p90: upper80PerMl,
  }))
}

function countsOf(record: CultureRecord): CultureOutlook['counts'] {
  return record.counts.map(({ fact, densityPerMl, lowerPerMl, upperPerMl, eggRatio }) => ({
    factId: fact.id,
    at: fact.at,
    densityPerMl,
    lowerPerMl,
    upperPerMl,
    eggRatio,
  }))
}

function harvestsOf(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { from, to }: { from: Instant; to: Instant },
): CultureOutlook['harvests'] {
  return factsOf(snapshot, 'harvest', culture.id)
    .filter(({ at }) => at >= from && at <= to)
    .map(({ id, at, data: { volumeL } }) => ({
      ...{ factId: id, at, volumeL },
      share: Math.min(1, volumeL / culture.volumeL),
    }))
}
