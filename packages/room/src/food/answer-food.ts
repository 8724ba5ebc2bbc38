import { type FoodAhead, type FoodAsked, foodAhead, type RoomSnapshot } from '@fryward/husbandry'
import { planFood } from '@fryward/planner'
import type { FoodAnswer, FoodChange, FoodCure, FoodOutlook, FoodWhatIf } from '@fryward/shared'
import { curesToTry } from './cures.ts'
import { foodOutlook } from './food-outlook.ts'
import { foodQuestion } from './food-question.ts'

/** A room, and what about its food is to be worked out. */
export type FoodJob = { snapshot: RoomSnapshot; asked: Omit<FoodAsked, 'changes'> }

type Planned = { ahead: FoodAhead; outlook: FoodOutlook }

async function planned({ snapshot, asked }: FoodJob, changes: readonly FoodChange[]): Promise<Planned> {
  const ahead = foodAhead(snapshot, { ...asked, changes })
  return { ahead, outlook: foodOutlook(ahead, await planFood(foodQuestion(ahead))) }
}

/** The weeks ahead of a room's food as they are. */
export const outlookOf = async (job: FoodJob): Promise<FoodOutlook> => (await planned(job, [])).outlook

/** The weeks ahead of a room's food, and the cures that help, each as it was tried. */
export async function answerFood(job: FoodJob): Promise<FoodAnswer> {
  const { ahead, outlook } = await planned(job, [])
  const cures: FoodCure[] = []
  for (const change of curesToTry(job.snapshot, { ahead, outlook })) {
    const after = (await planned(job, [change])).outlook
    if (helps(outlook, after)) cures.push(cureOf(change, after))
  }
  return { outlook, cures }
}

/** The weeks ahead as they are, and as they would be if these things were done or happened. */
export async function answerWhatIf(job: FoodJob, changes: readonly FoodChange[]): Promise<FoodWhatIf> {
  return { before: await outlookOf(job), after: (await planned(job, changes)).outlook }
}

// Less than that nobody would do anything for. common practice
const leastHelp = 0.1

/** It cures what worries, or puts it off, or saves a tenth of what is missing. */
function helps(before: FoodOutlook, after: FoodOutlook): boolean {
  if (after.worry === null) return true
  if (before.worry && after.worry.date > before.worry.date) return true
  return after.shortTotal < (1 - leastHelp) * before.shortTotal
}

const cureOf = (change: FoodChange, { worry, shortTotal, days }: FoodOutlook): FoodCure => ({
  ...{ change, worry, shortTotal },
  days: days.map(({ date, wanted, couldGive, chanceShort }) => ({ date, wanted, couldGive, chanceShort })),
})
