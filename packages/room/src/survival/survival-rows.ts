import { type BroodReview, reviewBroods } from '@fryward/husbandry'
import type { SurvivalQuery, SurvivalRow } from '@fryward/shared'
import type { Read } from '../frame/read-in-room.ts'
import { type ReadReview, readReviewRoom } from './read-review-room.ts'

/** Broods laid within a range of dates, newest first. */
export async function reviewsIn(
  read: Pick<Read, 'tx' | 'roomId' | 'ctx'>,
  { from, to }: SurvivalQuery,
): Promise<{ past: ReadReview; reviews: BroodReview[] }> {
  const past = await readReviewRoom(read)
  const reviews = reviewBroods(past.room).filter(
    ({ spawnedOn }) => (from === undefined || spawnedOn >= from) && (to === undefined || spawnedOn <= to),
  )
  return { past, reviews: reviews.reverse() }
}

export function toRow({ named }: ReadReview, review: BroodReview): SurvivalRow {
  const { brood, book, spawnedOn, stages, losses, missing, numberNow, mixedOn } = review
  return {
    id: brood.id,
    clutches: brood.clutches.map(({ id }) => named(id)),
    pairs: [...new Set(brood.clutches.map(({ pairId }) => pairId))].map(named),
    species: brood.clutches[0]?.species ?? '',
    care: brood.clutches[0]?.care ?? 'nest',
    tanks: review.tankIds.map(named),
    cultures: review.cultureIds.map(named),
    protocol: review.protocol,
    spawnedOn,
    bornOn: book.bornOn,
    ...{ stages, losses, missing, numberNow, mixedOn },
  }
}
