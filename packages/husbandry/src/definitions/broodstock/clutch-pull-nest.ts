import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const clutchPullNestDefinition = {
  id: 'clutch-pull-nest',
  title: 'Pull the nest',
  sentence: 'When hatching tonight is at least {fromChance} likely, pull the nest that afternoon, with air on it.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 0.95,
      source: commonPractice('nests moved hours before the hatch, the same night; likelier than not'),
    },
  },
} satisfies RuleDefinition
