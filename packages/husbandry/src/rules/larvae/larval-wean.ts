import { larvalWeanDefinition } from '../../definitions/larvae/larval-wean.ts'
import { weaning } from '../../plans/wean-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { taskContent } from '../../task/phrases.ts'
import { titled, whichFeed } from '../../task/titles.ts'
import { dryFoodFact, dryFoodField, dryFoodLinks, dryFoodSteps } from './dry-food-parts.ts'

export const larvalWean = defineRule(larvalWeanDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const plan = weaning(snapshot, batchById(snapshot, subject.id), day)
    if (!plan) return []
    return plan.alone.map((round) => ({
      roundId: round.id,
      content: taskContent({
        verb: 'feed' as const,
        title: titled('pinch', {
          thing: 'dry food',
          details: whichFeed(plan.rounds.indexOf(round), plan.rounds.length),
        }),
        steps: dryFoodSteps(plan),
        fields: [dryFoodField],
        because: [...dryFoodLinks(plan, null), parameter('feedsPerDay', 'and')],
      }),
      context: {},
    }))
  },
  record: ({ values, subjectId }) => ({ facts: [dryFoodFact(subjectId, values)] }),
})
