import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory, published } from '../../rule/parameters.ts'

export const larvalArtemiaFeedDefinition = {
  id: 'larval-artemia-feed',
  title: 'Feed Artemia',
  sentence:
    'From the species’ first Artemia day give newly hatched nauplii in {feedsPerDay} feeds a day, as many as are eaten within an hour or two, rising over {stretchDays}, never above {mostPerMl}.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice(
        'two by hand beside other food; 4 a day in A. clarkii larvae (methods of a larval experiment)',
      ),
    },
    mostPerMl: {
      type: 'number',
      label: 'at most',
      unit: 'per_mL',
      default: 3,
      minimum: 0.1,
      maximum: 10,
      source: fromMemory('0.5-3 per mL: textbooks and reviews'),
    },
    stretchDays: {
      type: 'number',
      label: 'from the first to the full amount',
      unit: 'days',
      default: 3,
      minimum: 0,
      maximum: 14,
      source: published('rotifers and Artemia together from day 5 without loss: Murray et al. 2025, Fishes 10(9):461'),
    },
  },
} satisfies RuleDefinition
