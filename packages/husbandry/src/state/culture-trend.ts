import { type CultureFall, cultureFall } from '@fryward/live-feed'
import { elapsedDays } from '../calendar/elapsed.ts'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { type CultureRecord, cultureHistory } from './culture-history.ts'

// Losing more than this a day between two counts is more than the error of good counts. common practice
const fallingPerDay = -0.05
// One low count may be a bad sample; two in a row are a trend. common practice
const intervalsInARow = 2

/** Growth per day between each two counts that follow each other, harvests and water changes added back. */
export function growthBetweenCounts({ counts, removals }: CultureRecord): number[] {
  return counts.slice(1).flatMap((count, index) => {
    const before = counts[index]!
    const days = elapsedDays(before.fact.at, count.fact.at)
    if (days <= 0 || before.densityPerMl <= 0 || count.densityPerMl <= 0) return []
    const logKept = removals
      .filter(({ fact }) => fact.at >= before.fact.at && fact.at < count.fact.at)
      .reduce((sum, { fraction }) => sum + Math.log1p(-fraction), 0)
    return [(Math.log(count.densityPerMl / before.densityPerMl) - logKept) / days]
  })
}

/** True when the last counts fell one after the other by more than was taken out: whatever the forecast hopes for. */
export function isFallingByCounts(record: CultureRecord): boolean {
  const last = growthBetweenCounts(record).slice(-intervalsInARow)
  return last.length === intervalsInARow && last.every((growth) => growth < fallingPerDay)
}

/** A fall that the last counts show, seen the first time and agreed by a second; null when there is none. */
export function fallOf(record: CultureRecord, culture: SnapshotCulture): CultureFall | null {
  const history = cultureHistory(record, culture)
  return history ? cultureFall(history) : null
}

/** True when nothing is to be thinned: the counts fell one after the other, or by a fall though it were the first. */
export const hasFallen = (record: CultureRecord, culture: SnapshotCulture): boolean =>
  isFallingByCounts(record) || fallOf(record, culture) !== null
