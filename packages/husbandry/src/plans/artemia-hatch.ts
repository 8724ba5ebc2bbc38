import { artemiaHatchHours, COLD_STORE } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { addHours, addMinutes } from '../calendar/elapsed.ts'
import { addDays, type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, firstRound, lastRound, roundsInOrder } from '../calendar/rounds.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { dateOf, factsUntil } from '../state/day-facts.ts'

// Hatching is known from 15 to 33 C (live-feed artemiaHatchHours).
const hatchC = { from: 15, to: 33 }

/** The hatch vessels in which cysts hatch at all, in order of name. */
export const hatchVessels = (snapshot: RoomSnapshot): SnapshotCulture[] =>
  snapshot.cultures
    .filter(({ kind, temperatureC }) => kind === 'artemia_hatch' && isHatchable(temperatureC))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))

const isHatchable = (temperatureC: number): boolean => temperatureC >= hatchC.from && temperatureC <= hatchC.to

/** Cysts that are in a vessel and have not been harvested; null when it is empty. */
export function hatchUnderWay(snapshot: RoomSnapshot, vessel: SnapshotCulture, until: Instant): FactOf<'care'> | null {
  const about = { subjectId: vessel.id, until }
  const start = factsUntil(snapshot, 'care', about).findLast(({ data }) => data.act === 'start_artemia')
  if (!start || !isHatchable(vessel.temperatureC)) return null
  // What is discarded is an older harvest in its jar: the vessel stays as full as it was.
  return factsUntil(snapshot, 'harvest', about).some(({ at }) => at > start.at) ? null : start
}

// Lots differ by hours, and what is harvested too early is lost: a tenth longer is allowed for. common practice
const slowLot = 0.1

/** Hours that a slow lot takes longer in a vessel than is published of its warmth. */
export const slowLotHours = (vessel: Pick<SnapshotCulture, 'temperatureC'>): number =>
  slowLot * artemiaHatchHours(vessel).hours

/** When cysts that went in at an instant are out, of a slow lot too. */
export const hatchedAt = (vessel: Pick<SnapshotCulture, 'temperatureC'>, startedAt: Instant): Instant =>
  addMinutes(startedAt, (artemiaHatchHours(vessel).hours + slowLotHours(vessel)) * 60)

/** How a look that found no nauplii is kept. */
export const noneOut = 'None out yet.'
// A lot is late by hours, not by minutes. common practice
const lookAgainHours = 2

export type RoundAt = { round: DayRound; day: HusbandryDay; at: Instant }

// Whoever comes a quarter of an hour early finds them out all the same.
const earlyMinutes = 15
// So long after a day's last round somebody still comes back for them: by morning they would have starved for half a
// night. Instar II has used a quarter of what it had: Ghent Univ. shrimp nutrition course. common practice for the hours
const comesBackHours = 3

/** With which round, and when, a hatch that is out at an instant is harvested. */
export function harvestRound(snapshot: RoomSnapshot, readyAt: Instant): RoundAt {
  const dayOf = (date: string) => husbandryDay({ room: snapshot.room, date })
  const day = dayOf(dateOf(snapshot, readyAt))
  const round = roundsInOrder(day).find(({ startsAt }) => startsAt >= addMinutes(readyAt, -earlyMinutes))
  if (round) return { round, day, at: round.startsAt }
  const last = lastRound(day)
  if (addHours(last.startsAt, comesBackHours) >= readyAt) return { round: last, day, at: readyAt }
  const next = dayOf(addDays(day.date, 1))
  return { round: firstRound(next), day: next, at: firstRound(next).startsAt }
}

/** The vessel whose nauplii a day feeds: harvested last and still alive in the cold, or else out first. */
export function vesselToFeedFrom(snapshot: RoomSnapshot, day: HusbandryDay): SnapshotCulture | null {
  const vessels = hatchVessels(snapshot)
  const kept = vessels
    .flatMap((vessel) => {
      const harvest = keptHarvest(snapshot, vessel, day)
      return harvest ? [{ vessel, at: harvest.at }] : []
    })
    .sort((a, b) => (a.at > b.at ? -1 : 1))[0]
  if (kept) return kept.vessel
  const coming = vessels
    .flatMap((vessel) => {
      const start = hatchUnderWay(snapshot, vessel, day.endsAt)
      return start ? [{ vessel, at: hatchedAt(vessel, start.at) }] : []
    })
    .sort((a, b) => (a.at < b.at ? -1 : 1))[0]
  return coming?.vessel ?? vessels[0] ?? null
}

/** The last harvest of a vessel that is still food on a day: in the cold no longer than nauplii last. */
export function keptHarvest(
  snapshot: RoomSnapshot,
  vessel: SnapshotCulture,
  day: HusbandryDay,
): FactOf<'harvest'> | null {
  const about = { subjectId: vessel.id, until: day.endsAt }
  const harvest = factsUntil(snapshot, 'harvest', about).at(-1)
  if (!harvest || harvest.at < addHours(firstRound(day).startsAt, -COLD_STORE.longestHours)) return null
  const isGone = factsUntil(snapshot, 'care', about).some(({ at, data }) => data.act === 'discard' && at > harvest.at)
  return isGone ? null : harvest
}

/** The harvest of a vessel that a day asks for: with its round, or with the first where it should have been out before. */
export function harvestDue(
  snapshot: RoomSnapshot,
  vessel: SnapshotCulture,
  day: HusbandryDay,
): { started: FactOf<'care'>; looks: FactOf<'observation'>[]; round: DayRound; at: Instant } | null {
  const started = hatchUnderWay(snapshot, vessel, day.endsAt)
  if (!started) return null
  const looks = factsUntil(snapshot, 'observation', { subjectId: vessel.id, until: day.endsAt }).filter(
    ({ at, data }) => at > started.at && data.note?.startsWith(noneOut),
  )
  const lastLook = looks.at(-1)
  const expectedAt = hatchedAt(vessel, started.at)
  const due = harvestRound(snapshot, lastLook ? addHours(lastLook.at, lookAgainHours) : expectedAt)
  if (due.at >= day.endsAt) return null
  const round = due.at < day.startsAt ? firstRound(day) : due.round
  return { started, looks, round, at: due.at < day.startsAt ? round.startsAt : due.at }
}
