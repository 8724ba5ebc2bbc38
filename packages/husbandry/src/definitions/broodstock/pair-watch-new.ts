import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const pairWatchNewDefinition = {
  id: 'pair-watch-new',
  title: 'Watch a new pair',
  sentence:
    'Watch a pair for fighting each evening of its first {days}, and part them before the weaker one hides at the surface.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    days: {
      type: 'number',
      label: 'from its forming',
      unit: 'days',
      default: 14,
      minimum: 1,
      maximum: 120,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
