import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const clutchDecideDefinition = {
  id: 'clutch-decide',
  title: 'Decide on the clutch',
  sentence:
    'When a clutch that nobody has decided on is at least {fromChance} likely to hatch within {daysAhead}, ask whether to raise all, part or none.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    daysAhead: {
      type: 'number',
      label: 'ahead',
      unit: 'days',
      default: 3,
      minimum: 0,
      maximum: 14,
      source: commonPractice('time to empty a tank and to raise the food'),
    },
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.1,
      minimum: 0.01,
      maximum: 0.9,
      source: commonPractice('the first night that a tank has to be ready for'),
    },
  },
} satisfies RuleDefinition
