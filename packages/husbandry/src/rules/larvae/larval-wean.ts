import { larvalWeanDefinition } from '../../definitions/larvae/larval-wean.ts'
import { weaning } from '../../plans/wean-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { grams, leastWeighedG, measurableG } from '../../task/measures.ts'
import { taskContent } from '../../task/phrases.ts'
import { titled, whichFeed } from '../../task/titles.ts'
import { dryFoodFact, dryFoodField, dryFoodLinks, dryFoodSteps, onlyDryFoodSteps } from './dry-food-parts.ts'

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
          thing: 'dry food',
          details: whichFeed(plan.rounds.indexOf(round), plan.rounds.length),
        }),
        amount,
        amountOf: amount && 'dry food',
        steps: plan.isAll ? onlyDryFoodSteps(plan) : dryFoodSteps(plan),
        fields: [dryFoodField],
        because: [...dryFoodLinks(plan, null), parameter('feedsPerDay', 'and')],
      }),
      context: {},
    }))
  },
  record: ({ content, values, subjectId }) => ({
    facts: [dryFoodFact(subjectId, values, content.amount?.value)],
  }),
})
