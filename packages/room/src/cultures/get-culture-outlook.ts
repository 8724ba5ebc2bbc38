import {
  addMinutes,
  type CultureRecord,
  cultureEstimateAt,
  cultureHistory,
  cultureRecord,
  elapsedDays,
  type RoomSnapshot,
  type SnapshotCulture,
} from '@fryward/husbandry'
import {
  backtestCulture,
  type CultureEstimate,
  type CultureHistory,
  densityFromCounts,
  forecastCulture,
  harvestAdvice,
} from '@fryward/live-feed'
import type { CultureOutlook, Id, Instant } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { loadSnapshot } from '../snapshot/load-snapshot.ts'
import { readInRoom } from '../work/write-in-room.ts'

// The same question gives the same picture; any fixed number would do.
const seed = 20_261
// Two counts are the fewest that show a growth rate.
const fewestCounts = 2

type Query = { harvestShare?: number | undefined; days: number }

/** Density behind and ahead of now, under a stated daily harvest: what the culture's chart draws. */
export async function getCultureOutlook({
  ctx,
  roomId,
  cultureId,
  query,
}: {
  ctx: Context
  roomId: Id
  cultureId: Id
  query: Query
}): Promise<CultureOutlook> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const snapshot = await loadSnapshot(tx, { roomId, now: ctx.now })
    const culture = snapshot.cultures.find((each) => each.id === cultureId)
    if (!culture) throw notFound('living culture')
    return outlookOf({ snapshot, culture, now: ctx.now, query })
  })
}

function outlookOf({
  snapshot,
  culture,
  now,
  query,
}: {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  now: Instant
  query: Query
}): CultureOutlook {
  const record = cultureRecord(snapshot, culture, { until: addMinutes(now, 1) })
  const seen = { counts: countsOf(record), harvests: harvestsOf(record) }
  const history = cultureHistory(record, culture)
  if (!history || history.observations.length < fewestCounts)
    return {
      ...seen,
      behind: [],
      ahead: [],
      growthPerDay: null,
      harvestSharePerDay: query.harvestShare ?? 0,
      sustainableSharePerDay: null,
      sentence: 'Count it twice, a day apart or more, and the days ahead can be drawn.',
    }
  const estimate = cultureEstimateAt(history, elapsedDays(record.startedAt, now))
  const ageDays = Math.max(0, elapsedDays(record.startedAt, now))
  const advice = harvestAdvice({
    estimate,
    volumeL: culture.volumeL,
    ageDays,
    seed,
    isFirstHarvest: seen.harvests.length === 0,
  })
  const harvestShare = query.harvestShare ?? advice.shareOfVolume
  const sustainableShare = sustainableDaily(estimate)
  const at = (day: number): Instant => addMinutes(record.startedAt, day * 1440)
  return {
    ...seen,
    behind: behindOf(history, estimate).map(({ day, ...band }) => ({ at: at(day), ...band })),
    ahead: aheadOf({ estimate, harvestShare, days: query.days }).map(({ day, ...band }) => ({ at: at(day), ...band })),
    growthPerDay: estimate.growthPerDay,
    harvestSharePerDay: harvestShare,
    sustainableSharePerDay: sustainableShare,
    sentence: sentenceOf({ culture, estimate, sustainableShare, harvestShare }),
  }
}

function countsOf(record: CultureRecord): CultureOutlook['counts'] {
  return record.counts.map(({ fact, eggRatio }) => {
    const { animals, volumeMl = 1, dilution } = fact.data
    const density = densityFromCounts({ animals, volumeMl, dilution })
    return {
      factId: fact.id,
      at: fact.at,
      densityPerMl: density.densityPerMl,
      lowerPerMl: density.lowerPerMl,
      upperPerMl: density.upperPerMl,
      eggRatio,
    }
  })
}

function harvestsOf(record: CultureRecord): CultureOutlook['harvests'] {
  return record.removals
    .filter(({ fact }) => fact.kind === 'harvest')
    .map(({ fact, volumeL, fraction }) => ({ factId: fact.id, at: fact.at, volumeL, share: fraction }))
}

/** What was expected before each count, from the counts before it alone. */
function behindOf(history: CultureHistory, estimate: CultureEstimate) {
  return backtestCulture(history, estimate.parameters).map(({ day, lower80PerMl, predictedPerMl, upper80PerMl }) => ({
    day,
    p10: lower80PerMl,
    p50: predictedPerMl,
    p90: upper80PerMl,
  }))
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

// A week under the usual fifth: what a culture above half of what it can hold gives once is not what it gives each day.
const sustainedFor = { days: 7, harvestFractionPerDay: 0.2 }

/** Share that grows back each day with nine chances in ten: 1 - exp(-growth), at the lower decile of the forecast. */
function sustainableDaily(estimate: CultureEstimate): number {
  const { days, harvestFractionPerDay } = sustainedFor
  const { growthPerDay } = forecastCulture({ estimate, plan: { harvestFractionPerDay }, days, seed })
  return Math.max(0, 1 - Math.exp(-growthPerDay.p10))
}

function sentenceOf({
  culture,
  estimate,
  sustainableShare,
  harvestShare,
}: {
  culture: SnapshotCulture
  estimate: CultureEstimate
  sustainableShare: number
  harvestShare: number
}): string {
  const percent = (share: number) => `${Math.round(share * 100)} %`
  const trend = { rising: 'rising', steady: 'holding', falling: 'falling' }[estimate.trend]
  const now = `About ${Math.round(estimate.densityPerMl)} per mL and ${trend}.`
  if (culture.isBackup) return `${now} This is a backup: leave it alone.`
  if (harvestShare > sustainableShare + 0.005)
    return `${now} Taking ${percent(harvestShare)} a day is more than it is sure to grow back (${percent(sustainableShare)}).`
  return `${now} It grows back ${percent(sustainableShare)} a day with nine chances in ten.`
}
