import {
  addMinutes,
  cultureEstimateAt,
  elapsedDays,
  harvestPlan,
  husbandryDay,
  localDate,
  type RoomSnapshot,
  type SnapshotCulture,
} from '@fryward/husbandry'
import { type CultureEstimate, forecastCulture, steadyHarvest } from '@fryward/live-feed'
import type { CultureOutlook, Instant } from '@fryward/shared'
import { behindOf, cultureSeen, growsByKnownRates } from './culture-seen.ts'

// The same question gives the same picture; any fixed number would do.
const seed = 20_261

type Query = { harvestShare?: number | undefined; days: number }
type Asked = { snapshot: RoomSnapshot; culture: SnapshotCulture; now: Instant; query: Query }

/** What was seen and expected of a culture, and the days ahead of now under a stated daily harvest. */
export function cultureOutlook({ snapshot, culture, now, query }: Asked): CultureOutlook {
  const { seen, record, history } = cultureSeen(snapshot, culture, now)
  if (!history)
    return {
      ...seen,
      behind: [],
      ahead: [],
      growthPerDay: null,
      harvestSharePerDay: query.harvestShare ?? 0,
      sustainableSharePerDay: null,
      sentence: withoutHistory(culture),
    }
  const ageDays = Math.max(0, elapsedDays(record.startedAt, now))
  const estimate = cultureEstimateAt(history, ageDays)
  const harvestShare = query.harvestShare ?? advisedShare({ snapshot, culture, now })
  const { shareOfVolume: sustainableShare } = steadyHarvest(estimate.parameters, {
    dilutionPerDay: estimate.dilutionPerDay,
  })
  return {
    ...seen,
    behind: behindOf({ record, history }, estimate),
    ahead: aheadOf({ estimate, harvestShare, days: query.days }).map(({ day, ...band }) => ({
      at: addMinutes(record.startedAt, day * 1440),
      ...band,
    })),
    growthPerDay: estimate.growthPerDay,
    harvestSharePerDay: harvestShare,
    sustainableSharePerDay: sustainableShare,
    sentence: sentenceOf({
      culture,
      estimate,
      sustainableShare,
      harvestShare,
      isAdvice: query.harvestShare === undefined,
    }),
  }
}

function withoutHistory(culture: SnapshotCulture): string {
  if (growsByKnownRates(culture)) return 'Count it twice, a day apart or more, and the days ahead can be drawn.'
  if (culture.kind === 'artemia_hatch')
    return 'Nauplii do not grow in number: each lot is what was counted at its harvest.'
  return 'How fast it grows is known of rotifers only: its counts are all there is to go by.'
}

function aheadOf({ estimate, harvestShare, days }: { estimate: CultureEstimate; harvestShare: number; days: number }) {
  const forecast = forecastCulture({ estimate, plan: { harvestFractionPerDay: harvestShare }, days, seed })
  const today = {
    day: estimate.day,
    p10: estimate.lower80PerMl,
    p25: estimate.densityPerMl,
    p50: estimate.densityPerMl,
    p75: estimate.densityPerMl,
    p90: estimate.upper80PerMl,
  }
  return [today, ...forecast.days.map(({ day, p10, p25, p50, p75, p90 }) => ({ day, p10, p25, p50, p75, p90 }))]
}

/** What the whole of today stands for on the list, by the room's own rule; nothing where the list asks for no harvest. */
function advisedShare({ snapshot, culture, now }: Omit<Asked, 'query'>): number {
  const date = localDate({ timeZone: snapshot.room.timeZone, at: now })
  const plan = harvestPlan(snapshot, culture, husbandryDay({ room: snapshot.room, date }))
  return 'why' in plan ? 0 : plan.dayL / culture.volumeL
}

function sentenceOf({
  culture,
  estimate,
  sustainableShare,
  harvestShare,
  isAdvice,
}: {
  culture: SnapshotCulture
  estimate: CultureEstimate
  sustainableShare: number
  harvestShare: number
  /** The share is what today's list advises, not one that somebody asks about. */
  isAdvice: boolean
}): string {
  const percent = (share: number) => `${Math.round(share * 100)}%`
  const trend = { rising: 'rising', steady: 'holding', falling: 'falling' }[estimate.trend]
  const now = `About ${Math.round(estimate.densityPerMl)} per mL and ${trend}.`
  if (culture.isBackup) return `${now} This is a backup: thinned only every few days, for nobody to eat.`
  const isMore = harvestShare > sustainableShare + 0.005
  if (isMore && isAdvice)
    return `${now} It can give ${percent(harvestShare)} today; day after day ${percent(sustainableShare)} keeps it where it gives most.`
  if (isMore)
    return `${now} Taking ${percent(harvestShare)} a day is more, and thins it out: ${percent(sustainableShare)} keeps it where it gives most.`
  return `${now} Day after day ${percent(sustainableShare)} keeps it where it gives most.`
}
