import type { CultureKind, PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay, husbandryDay, localDate } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { livingBatches } from './batch-state.ts'
import { doubtAbout } from './culture-doubt.ts'
import { cultureRecord } from './culture-history.ts'
import { densityAt } from './culture-state.ts'
import { batchOrder } from './food-orders.ts'

function linksOn(snapshot: RoomSnapshot, date: PlainDate) {
  return snapshot.feedLinks
    .filter((link) => link.fromOn <= date && (link.untilOn === null || link.untilOn >= date))
    .sort((a, b) => (a.fromOn < b.fromOn ? -1 : a.fromOn > b.fromOn ? 1 : a.id < b.id ? -1 : 1))
}

/** The cultures linked to a batch on a date, the oldest link first and a backup last: one culture a batch is cleaner. */
export function culturesLinked(snapshot: RoomSnapshot, batch: SnapshotBatch, date: PlainDate): SnapshotCulture[] {
  const ids = new Set(
    linksOn(snapshot, date)
      .filter((link) => link.batchId === batch.id)
      .map((link) => link.cultureId),
  )
  return backupsLast([...ids].flatMap((id) => snapshot.cultures.filter((culture) => culture.id === id)))
}

/**
 * The cultures that feed a batch on a date, without rotifers that are in doubt: those that the plan of the food names, most
 * first, then those linked to it. Where all its rotifers are in doubt or were begun again in the last days, the room's other sound ones stand in, the one with
 * most animals first.
 */
export function culturesFeeding(snapshot: RoomSnapshot, batch: SnapshotBatch, date: PlainDate): SnapshotCulture[] {
  const planned = culturesPlanned(snapshot, batch, date)
  return [...planned, ...culturesByLink(snapshot, batch, date).filter((culture) => !planned.includes(culture))]
}

/** The sound rotifers that a batch eats from by the plan, most first; a plan may be older than a doubt or a restart. */
function culturesPlanned(snapshot: RoomSnapshot, batch: SnapshotBatch, date: PlainDate): SnapshotCulture[] {
  const { from = [] } = batchOrder(snapshot, batch, date) ?? {}
  const isAble = ableOn(snapshot, date)
  return from.flatMap(({ cultureId }) => snapshot.cultures.filter((each) => each.id === cultureId && isAble(each)))
}

function soundOn(snapshot: RoomSnapshot, date: PlainDate): (culture: SnapshotCulture) => boolean {
  const day = husbandryDay({ room: snapshot.room, date })
  return (culture) => culture.kind !== 'rotifer' || doubtAbout(snapshot, culture, day) === null
}

/** Whether a culture is of sound rotifers that were not begun again in the last days. */
function ableOn(snapshot: RoomSnapshot, date: PlainDate): (culture: SnapshotCulture) => boolean {
  const day = husbandryDay({ room: snapshot.room, date })
  const isSound = soundOn(snapshot, date)
  return (culture) => culture.kind === 'rotifer' && isSound(culture) && !isJustBegunAgain(snapshot, culture, day)
}

function culturesByLink(snapshot: RoomSnapshot, batch: SnapshotBatch, date: PlainDate): SnapshotCulture[] {
  const linked = culturesLinked(snapshot, batch, date)
  const day = husbandryDay({ room: snapshot.room, date })
  const isSound = soundOn(snapshot, date)
  const sound = linked.filter(isSound)
  const isRotifer = ({ kind }: SnapshotCulture) => kind === 'rotifer'
  const isAble = ableOn(snapshot, date)
  if (!linked.some(isRotifer)) return sound
  if (sound.some(isAble)) return [...sound.filter(isAble), ...sound.filter((culture) => !isAble(culture))]
  const moment = { at: firstRound(day).startsAt, until: day.endsAt }
  const standIns = snapshot.cultures
    .filter((culture) => isAble(culture) && culture.startedAt < day.endsAt)
    .map((culture) => ({
      culture,
      animals: (densityAt(snapshot, culture, moment)?.densityPerMl ?? 0) * culture.volumeL,
    }))
    .filter(({ animals }) => animals > 0)
    .sort((a, b) => b.animals - a.animals || (a.culture.id < b.culture.id ? -1 : 1))
  return [...backupsLast(standIns.map(({ culture }) => culture)), ...sound]
}

// As long as a culture is left alone before it is thinned. common practice
const leftAloneDays = 3

/** Emptied and begun again from another lately: what it was given is to grow, and has nothing to spare. */
function isJustBegunAgain(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean {
  const { startedAt, inoculations } = cultureRecord(snapshot, culture, { until: day.endsAt })
  return (
    startedAt > culture.startedAt &&
    inoculations.length > 0 &&
    daysBetween(localDate({ timeZone: snapshot.room.timeZone, at: startedAt }), day.date) < leftAloneDays
  )
}

const backupsLast = (cultures: SnapshotCulture[]): SnapshotCulture[] => [
  ...cultures.filter(({ isBackup }) => !isBackup),
  ...cultures.filter(({ isBackup }) => isBackup),
]

/**
 * The cultures of a kind that a batch eats from on a date: all of its plan, or the first choice. Of copepods all that are linked:
 * one alone seldom yields enough.
 */
export function feedersOf(
  snapshot: RoomSnapshot,
  { batch, kind, date }: { batch: SnapshotBatch; kind: CultureKind; date: PlainDate },
): SnapshotCulture[] {
  const planned = kind === 'rotifer' ? culturesPlanned(snapshot, batch, date) : []
  if (planned.length > 0) return planned
  return culturesFeeding(snapshot, batch, date)
    .filter((culture) => culture.kind === kind)
    .slice(0, kind === 'copepod' ? Number.POSITIVE_INFINITY : 1)
}

/** The batches that eat from a culture by the plan, or without one have it as first choice, in order of name. */
export function batchesFedBy(snapshot: RoomSnapshot, culture: SnapshotCulture, date: PlainDate): SnapshotBatch[] {
  return livingBatches(snapshot)
    .filter((batch) => feedersOf(snapshot, { batch, kind: culture.kind, date }).some(({ id }) => id === culture.id))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}
