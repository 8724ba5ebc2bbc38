import { foodAhead } from '@fryward/husbandry'
import { planFood } from '@fryward/planner'
import { type FoodJob, outlookOf } from '../../packages/room/src/food/answer-food.ts'
import { foodOutlook } from '../../packages/room/src/food/food-outlook.ts'
import { foodQuestion } from '../../packages/room/src/food/food-question.ts'
import type { FoodThinker } from '../../packages/room/src/food/food-thinker.ts'

/**
 * A room's food worked out with its things known by their names: futures are drawn by ids, and the same room served and by the
 * rules alone has others. Without cures, which nobody here chooses.
 */
export async function outlookByName(job: FoodJob, outlook = outlookOf): ReturnType<typeof outlookOf> {
  const { tanks, cultures, concentrates, pairs, clutches, batches } = job.snapshot
  const ids = Object.entries({ tanks, cultures, concentrates, pairs, clutches, batches }).flatMap(([kind, things]) =>
    things.map(({ id, name }) => ({ id, called: `${kind} ${name}` })),
  )
  const said = (value: unknown, from: 'id' | 'called', to: 'id' | 'called') =>
    JSON.parse(ids.reduce((text, each) => text.replaceAll(`"${each[from]}"`, `"${each[to]}"`), JSON.stringify(value)))
  return said(await outlook(said(job, 'id', 'called')), 'called', 'id')
}

/** The plan alone, which says who eats what, not tried against what may come: half the time. */
export async function plannedByName(job: FoodJob): ReturnType<typeof outlookOf> {
  return outlookByName(job, async ({ snapshot, asked }) => {
    const ahead = foodAhead(snapshot, { ...asked, changes: [] })
    return foodOutlook(ahead, await planFood({ ...foodQuestion(ahead), futures: [] }))
  })
}

export const thinkByName: Pick<FoodThinker, 'answer'> = {
  answer: async (job) => ({ outlook: await outlookByName(job), cures: [] }),
}
