import type { FoodWhatIf, Id, WhatIf } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { foodJob } from './food-job.ts'
import type { FoodThinker } from './food-thinker.ts'

/** What would become of the room's food if these things were done or happened; nothing is kept. */
export async function askWhatIf({
  ctx,
  roomId,
  input,
  thinker,
}: {
  ctx: Context
  roomId: Id
  input: WhatIf
  thinker: FoodThinker
}): Promise<FoodWhatIf> {
  const { job } = await readInRoom({ ctx, roomId, permission: 'record' }, foodJob)
  const { snapshot } = job
  const things = {
    pairId: snapshot.pairs,
    likePairId: snapshot.pairs,
    cultureId: snapshot.cultures,
    clutchId: snapshot.clutches,
    subjectId: [...snapshot.clutches, ...snapshot.batches],
  }
  const names = {
    pairId: 'pair',
    likePairId: 'pair',
    cultureId: 'culture',
    clutchId: 'clutch',
    subjectId: 'clutch or batch',
  }
  for (const change of input.changes)
    for (const key of Object.keys(things) as (keyof typeof things)[])
      if (key in change && !things[key].some(({ id }) => id === (change as Record<string, unknown>)[key]))
        throw notFound(names[key])
  return thinker.whatIf(job, input.changes)
}
