import { z } from 'zod'
import { larvalWeanDefinition } from '../../definitions/larvae/larval-wean.ts'
import { weaning } from '../../plans/wean-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { weanedFoods } from '../../species/schema.ts'
import { foodName } from '../../task/foods.ts'
import { grams, leastWeighedG, measurableG } from '../../task/measures.ts'
import { taskContent } from '../../task/phrases.ts'
import { titled, whichFeed } from '../../task/titles.ts'
import {
  onlyWeanedFoodSteps,
  weanedFoodFact,
  weanedFoodField,
  weanedFoodLinks,
  weanedFoodSteps,
} from './weaned-food-parts.ts'

// Tasks that were kept before frozen food was one of its own did not say.
const ContextSchema = z.object({ food: z.enum(weanedFoods).default('dry') })

export const larvalWean = defineRule(larvalWeanDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const plan = weaning(snapshot, batchById(snapshot, subject.id), day)
    if (!plan) return []
    // A pinch while live food follows; as a scale shows it once there is nothing else.
    const amountG = plan.isAll && plan.feedG !== null ? measurableG(plan.feedG) : 0
    const amount = amountG >= leastWeighedG ? grams(amountG) : null
    return plan.alone.map((round) => ({
      roundId: round.id,
      content: taskContent({
        verb: 'feed' as const,
        title: titled(amount ? 'give' : 'pinch', {
          amount,
          thing: foodName(plan.food),
          details: whichFeed(plan.rounds.indexOf(round), plan.rounds.length),
        }),
        amount,
        amountOf: amount && foodName(plan.food),
        steps: plan.isAll ? onlyWeanedFoodSteps(plan) : weanedFoodSteps(plan),
        fields: [weanedFoodField(plan.food)],
        because: [...weanedFoodLinks(plan, null), parameter('feedsPerDay', 'and')],
      }),
      context: { food: plan.food },
    }))
  },
  record: ({ context, content, values, subjectId }) => {
    const { food } = ContextSchema.parse(context)
    return { facts: [weanedFoodFact(subjectId, { food, values, amountG: content.amount?.value })] }
  },
})
