import { type CultureHistory, toEvents, toLogObservations } from './culture-history.ts'

/** Losing more than this between two counts, beyond what was taken, is no error of two fair counts; common practice. */
export const FALL_SHARE = 0.4
/** A fall stands while no more than this many counts since have said otherwise; common practice. */
const COUNTS_LOOKED_BACK = 4
/** Grown by this share since the lowest count after a fall, a culture has turned; common practice. */
const TURNED_SHARE = 0.25

export type CultureFall = {
  /** What should have been there with no growth at all: the count before the fall less what was taken out since. */
  expectedPerMl: number
  countedPerMl: number
  /** Part of `expectedPerMl` that is gone. */
  lostShare: number
  /** Day of the first low count. */
  day: number
  /** True when a later count says the same: one low count may be a bad sample, two are trouble. */
  isAgreed: boolean
}

/**
 * Whether the last counts show a fall: more than 40 % lost beyond what was taken, at whatever density and though it
 * were the first time. A second count that finds the animals again takes it back; growth since then ends it.
 * @throws ArgumentError as for `fitCulture`.
 */
export function cultureFall(history: CultureHistory): CultureFall | null {
  const counts = toLogObservations(history)
  const events = toEvents(history)
  const moved = (densityPerMl: number, fromDay: number, toDay: number) =>
    events
      .filter(({ day }) => day >= fromDay && day < toDay)
      .reduce((density, { keepShare, addedPerMl }) => (density + addedPerMl) * keepShare, densityPerMl)
  const last = counts.at(-1)!
  for (let low = counts.length - 1; low >= Math.max(1, counts.length - COUNTS_LOOKED_BACK); low -= 1) {
    const [before, first] = [counts[low - 1]!, counts[low]!]
    const lostBy = (count: typeof first) => 1 - count.densityPerMl / moved(before.densityPerMl, before.day, count.day)
    const since = counts.slice(low)
    if (!(lostBy(first) > FALL_SHARE)) continue
    if (!since.every((count) => lostBy(count) > FALL_SHARE)) return null
    const hasTurned = since.some(
      (count) => last.densityPerMl > (1 + TURNED_SHARE) * moved(count.densityPerMl, count.day, last.day),
    )
    if (since.length > 2 && hasTurned) return null
    return {
      expectedPerMl: moved(before.densityPerMl, before.day, last.day),
      countedPerMl: last.densityPerMl,
      lostShare: lostBy(last),
      day: first.day,
      isAgreed: since.length > 1,
    }
  }
  return null
}
