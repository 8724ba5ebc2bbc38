import { compareBroods } from '@fryward/husbandry'
import type { ComparedBy, CompareQuery, Id, SurvivalComparison } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import type { ReadReview } from './read-review-room.ts'
import { reviewsIn } from './survival-rows.ts'

/** Groups of clutches side by side, and what may be concluded from them. */
export async function compareSurvival({
  ctx,
  roomId,
  query: { by, ...range },
}: {
  ctx: Context
  roomId: Id
  query: CompareQuery
}): Promise<SurvivalComparison> {
  return readInRoom({ ctx, roomId }, async (read) => {
    const { past, reviews } = await reviewsIn(read, range)
    const { groups, ...compared } = compareBroods(reviews, by)
    return {
      ...compared,
      by,
      groups: groups.map((group) => ({ ...group, name: nameOf(past, { by, key: group.key }) })),
    }
  })
}

/** Seasons and foods are named where sentences are made. */
function nameOf(past: ReadReview, { by, key }: { by: ComparedBy; key: string }): string {
  if (by === 'season' || by === 'protocol' || by === 'green_water' || by === 'artemia_day') return key
  return by === 'species' ? past.nameOfSpecies(key) : past.named(key).name
}
