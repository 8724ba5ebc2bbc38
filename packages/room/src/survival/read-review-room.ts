import { findSpecies, localDate, type ReviewRoom } from '@fryward/husbandry'
import type { Food, Id, Instant, SubjectKind } from '@fryward/shared'
import { readReview } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Read } from '../frame/read-in-room.ts'
import { lasting } from '../state/fact-window.ts'
import { toClutch } from '../state/room-state.ts'
import { toStandingFact } from '../state/standing-fact.ts'

export type Named = { id: Id; kind: SubjectKind; name: string }

/** The past of a room for the pure review, with the names of its things. */
export type ReadReview = {
  room: ReviewRoom
  /** The thing as the wire names it. */
  named: (id: Id) => Named
  nameOfSpecies: (species: string) => string
}

/**
 * The room's past from the tables, ended things and all: its state closes off what the review asks about, and may be of
 * another moment.
 */
export async function readReviewRoom({ tx, roomId, ctx }: Pick<Read, 'tx' | 'roomId' | 'ctx'>): Promise<ReadReview> {
  const rows = await readReview(tx, { roomId, lasting })
  const subjects = new Map(rows.subjects.map((subject) => [subject.id, subject]))
  const withEnd = <T extends { id: Id }>(row: T): T & { endedAt: Instant | null } => ({
    ...row,
    endedAt: subjects.get(row.id)?.endedAt ?? null,
  })
  const { timeZone } = rows.room
  return {
    room: {
      timeZone,
      today: localDate({ timeZone, at: ctx.now }),
      clutches: rows.clutches.map(toClutch),
      batches: rows.batches.map(withEnd),
      groups: rows.groups.map(withEnd),
      // Food was checked by its schema when it was written.
      meals: rows.meals.map((meal) => ({ ...meal, food: meal.food as Food })),
      stays: rows.stays,
      // Who wrote them does not matter here.
      facts: rows.facts.map((row) => toStandingFact(row, {})),
    },
    named: (id) => {
      const subject = subjects.get(id)
      if (!subject) throw notFound('thing')
      return { id: subject.id, kind: subject.kind, name: subject.name }
    },
    nameOfSpecies: (species) => findSpecies(species)?.tradeName ?? species,
  }
}
