import { defineRule } from '../../engine/rule.ts'
import { ordinalText } from '../done.ts'
import { phrase, taskContent } from '../phrases.ts'
import { weanId, weaning, weanParameters } from '../plans/wean-plan.ts'
import { dryFoodFact, dryFoodField, dryFoodLinks, dryFoodSteps } from './dry-food-parts.ts'
import { batchById } from './prey-count.ts'

export const larvalWean = defineRule({
  id: weanId,
  title: 'Offer dry food',
  sentence:
    'From the species’ weaning day offer dry food in {feedsPerDay} feeds a day beside the live food, until it is all they eat; with an Artemia feed it is part of that.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: weanParameters,
  draft: ({ snapshot, day, subject, parameter }) => {
    const plan = weaning(snapshot, batchById(snapshot, subject.id), day)
    if (!plan) return []
    return plan.alone.map((round) => ({
      roundId: round.id,
      content: taskContent({
        verb: 'feed' as const,
        title: phrase(`A pinch of dry food${ordinalText(plan.rounds.indexOf(round), plan.rounds.length, 'feed')}`),
        steps: dryFoodSteps(),
        fields: [dryFoodField],
        because: [...dryFoodLinks(plan, null), parameter('feedsPerDay', 'and')],
      }),
      context: {},
    }))
  },
  record: ({ values, subjectId }) => ({ facts: [dryFoodFact(subjectId, values)] }),
})
