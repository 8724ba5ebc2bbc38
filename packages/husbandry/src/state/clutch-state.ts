import type { ClutchIntent, ClutchState, Id } from '@fryward/shared'
import { headsOf } from '../facts/heads.ts'
import { effectsOf } from '../facts/index.ts'
import { factsAbout, factsOf, type Happened, lastFactOf } from '../snapshot/facts-of.ts'
import type { SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { type Book, bookNumber, entriesOf } from './book.ts'
import { bookLines } from './book-lines.ts'

/** What has become of a clutch, from the standing facts alone: striking out the hatch brings it back to incubating. */
export function clutchState(happened: Happened, clutch: Pick<SnapshotClutch, 'id'>): ClutchState {
  const turns = new Set(factsAbout(happened, clutch.id).map((fact) => effectsOf(fact).clutchIs))
  if (!turns.has('laid')) return 'void'
  if (turns.has('hatched')) return 'hatched'
  if (turns.has('moved')) return 'moved'
  const eggs = clutchEggs(happened, clutch)
  if (eggs !== null && eggs > 0 && bookNumber(clutchBook(happened, clutch.id)) === 0) return 'lost'
  return 'incubating'
}

/** What is meant with a clutch: the latest decision that stands, else what was meant when it was written down. */
export function clutchIntent(happened: Happened, clutch: Pick<SnapshotClutch, 'id' | 'intent'>): ClutchIntent {
  return lastFactOf(happened, 'decision', clutch.id)?.data.intent ?? clutch.intent
}

/** Eggs by the latest count, else as first written down; null when nobody has said. */
export function clutchEggs(happened: Happened, clutch: Pick<SnapshotClutch, 'id'>): number | null {
  const count = factsOf(happened, 'count', clutch.id)
    .filter((fact) => fact.data.of === 'eggs')
    .at(-1)
  if (count) return Math.round(headsOf(count.data))
  return lastFactOf(happened, 'spawning', clutch.id)?.data.eggs ?? null
}

/** Eggs by the book: laid, less losses and moves; a count of eggs starts it anew. */
export function clutchBook(happened: Happened, clutchId: Id): Book {
  const lines = bookLines(happened, clutchId)
  return {
    opening: lines.findLast(({ way, kind }) => way === 'begin' && kind === 'spawning')?.number ?? null,
    entries: entriesOf(lines, 'eggs'),
  }
}
