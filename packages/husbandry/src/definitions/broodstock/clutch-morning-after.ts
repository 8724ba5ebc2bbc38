import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const clutchMorningAfterDefinition = {
  id: 'clutch-morning-after',
  title: 'The morning after',
  sentence: 'After a night that was at least {fromChance} likely, say in the morning what hatched and about how many.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.1,
      minimum: 0.01,
      maximum: 0.9,
      source: commonPractice('one night in ten is worth a look at dawn'),
    },
  },
} satisfies RuleDefinition
