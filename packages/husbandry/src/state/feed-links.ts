import type { PlainDate } from '@fryward/shared'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { standingBatches } from './batch-state.ts'
import { doubtAbout } from './culture-doubt.ts'
import { densityAt } from './culture-state.ts'

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
 * The cultures that feed a batch on a date: those linked to it, without rotifers that are in doubt. Where all its rotifers
 * are, the room's other sound ones stand in, the one with most animals first.
 */
export function culturesFeeding(snapshot: RoomSnapshot, batch: SnapshotBatch, date: PlainDate): SnapshotCulture[] {
  const linked = culturesLinked(snapshot, batch, date)
  const day = husbandryDay({ room: snapshot.room, date })
  const isSound = (culture: SnapshotCulture) =>
    culture.kind !== 'rotifer' || doubtAbout(snapshot, culture, day) === null
  const sound = linked.filter(isSound)
  const isRotifer = ({ kind }: SnapshotCulture) => kind === 'rotifer'
  if (!linked.some(isRotifer) || sound.some(isRotifer)) return sound
  const moment = { at: firstRound(day).startsAt, until: day.endsAt }
  const standIns = snapshot.cultures
    .filter((culture) => isRotifer(culture) && isSound(culture) && culture.startedAt < day.endsAt)
    .map((culture) => ({
      culture,
      animals: (densityAt(snapshot, culture, moment)?.densityPerMl ?? 0) * culture.volumeL,
    }))
    .filter(({ animals }) => animals > 0)
    .sort((a, b) => b.animals - a.animals || (a.culture.id < b.culture.id ? -1 : 1))
  return [...sound, ...backupsLast(standIns.map(({ culture }) => culture))]
}

const backupsLast = (cultures: SnapshotCulture[]): SnapshotCulture[] => [
  ...cultures.filter(({ isBackup }) => !isBackup),
  ...cultures.filter(({ isBackup }) => isBackup),
]

/** The batches that a culture is the first choice for, in order of name. */
export function batchesFedBy(snapshot: RoomSnapshot, culture: SnapshotCulture, date: PlainDate): SnapshotBatch[] {
  return standingBatches(snapshot)
    .filter(
      (batch) => culturesFeeding(snapshot, batch, date).find(({ kind }) => kind === culture.kind)?.id === culture.id,
    )
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}
