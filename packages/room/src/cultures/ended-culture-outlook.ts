import {
  cultureEstimateAt,
  dayMonth,
  elapsedDays,
  localDate,
  type RoomSnapshot,
  type SnapshotCulture,
} from '@fryward/husbandry'
import type { CultureOutlook, Instant } from '@fryward/shared'
import { behindOf, cultureSeen } from './culture-seen.ts'

type Ended = { snapshot: RoomSnapshot; culture: SnapshotCulture; endedAt: Instant; reason: string | null }

/** The same picture of a culture that has ended: what was seen and expected until then, and nothing ahead. */
export function endedCultureOutlook({ snapshot, culture, endedAt, reason }: Ended): CultureOutlook {
  const { seen, record, history } = cultureSeen(snapshot, culture, endedAt)
  const endDay = Math.max(0, elapsedDays(record.startedAt, endedAt))
  const estimate = history ? cultureEstimateAt(history, endDay) : null
  const date = dayMonth(localDate({ timeZone: snapshot.room.timeZone, at: endedAt }))
  const ended = `Ended on ${date}${reason ? `: ${reason.replace(/\.$/, '')}` : ''}.`
  return {
    ...seen,
    behind:
      history && estimate
        ? [
            ...behindOf({ record, history }, estimate).filter(({ at }) => at < endedAt),
            { at: endedAt, p10: estimate.lower80PerMl, p50: estimate.densityPerMl, p90: estimate.upper80PerMl },
          ]
        : [],
    ahead: [],
    growthPerDay: estimate?.growthPerDay ?? null,
    harvestSharePerDay: 0,
    sustainableSharePerDay: null,
    sentence: estimate ? `${ended} It stood at about ${Math.round(estimate.densityPerMl)} per mL then.` : ended,
  }
}
