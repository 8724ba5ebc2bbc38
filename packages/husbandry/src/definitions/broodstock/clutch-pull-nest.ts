import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const clutchPullNestDefinition = {
  id: 'clutch-pull-nest',
  title: 'Pull the nest',
  sentence:
    'When hatching tonight is at least {fromChance} likely, pull the nest that afternoon, {hoursBeforeDark} before dark or earlier, with air on it.',
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
    hoursBeforeDark: {
      type: 'number',
      label: 'before dark at the latest, where a round allows it',
      unit: 'hours',
      default: 2,
      minimum: 0,
      maximum: 8,
      source: published('moved hours before the hatch, the same night: Rodrigues 2017, Aquaculture Brasil column 77'),
    },
  },
} satisfies RuleDefinition
