import type { PlainDate } from '@fryward/shared'
import { localDate } from '../calendar/husbandry-day.ts'
import type { Happened } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { fromMemory } from '../species/source.ts'
import { batchNumbers, standingBatches } from '../state/batch-state.ts'
import { bookLines, totalOf, type WrittenLine } from '../state/book-lines.ts'
import { dayOfLife } from '../state/larval-diet.ts'

/** Nearly all losses fall on days 1 to 5: Anto & Turingan 2010, A. frenatus; that they fall evenly is an assumption. */
export const lossesUntilDay = fromMemory(5, 'mass mortality on days 1-5, few on 6-14: Anto & Turingan 2010').value

/** Of the larvae of a batch that were watched through their first days, how many lived. */
export type BatchLived = { species: string; lived: number; watched: number }

type Batch = Pick<SnapshotBatch, 'id' | 'species' | 'hatchedOn'>
export type PastBatches = Happened & { timeZone: string; batches: readonly Batch[] }

/** Of batches that have ended: whoever was still on the book then was found by nobody, and died. */
export const livedInPast = (past: PastBatches): BatchLived[] =>
  past.batches.flatMap((batch) => {
    const { now } = batchNumbers(past, batch)
    const counted = countedOf(past, batch)
    // Where none is known to have left alive, nobody has said what became of the rest: they may have been moved on.
    if (counted === null || now === null || (now > 0 && counted.laterAlive === 0)) return []
    return livedOf(batch, counted, 0)
  })

/** Of the batches of today that are past their first days. */
export const livedToday = (snapshot: RoomSnapshot, date: PlainDate): BatchLived[] =>
  standingBatches(snapshot).flatMap((batch) => {
    const { now } = batchNumbers(snapshot, batch)
    const isPast = dayOfLife(batch, date) >= lossesUntilDay
    const counted = isPast ? countedOf({ facts: snapshot.facts, timeZone: snapshot.room.timeZone }, batch) : null
    return counted === null || now === null ? [] : livedOf(batch, counted, now)
  })

/** Who was watched from the first day on, and who of them was taken out alive after the days that decide. */
type Counted = { watched: number; laterAlive: number }

function countedOf(past: Omit<PastBatches, 'batches'>, batch: Batch): Counted | null {
  const { hatched } = batchNumbers(past, batch)
  if (!hatched) return null
  const lines = bookLines(past, batch.id)
  const left = lines.filter(({ way, kind }) => way === 'out' && kind !== 'loss')
  const isEarly = ({ at }: WrittenLine) => dayOfLife(batch, localDate({ timeZone: past.timeZone, at })) < lossesUntilDay
  const [early, later] = [left.filter(isEarly), left.filter((line) => !isEarly(line))]
  return { watched: hatched + totalOf(lines, 'in') - totalOf(early, 'out'), laterAlive: totalOf(later, 'out') }
}

const livedOf = ({ species }: Batch, { watched, laterAlive }: Counted, now: number): BatchLived[] =>
  watched > 0 ? [{ species, lived: Math.min(watched, now + laterAlive), watched }] : []
