import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const clutchDeadEggsDefinition = {
  id: 'clutch-dead-eggs',
  title: 'Take dead eggs out',
  sentence:
    'When at least {fromShare} of a clutch was seen dead within a day, take the dead eggs out before they mould.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromShare: {
      type: 'number',
      label: 'of the clutch or more',
      unit: 'share',
      default: 0.05,
      minimum: 0.005,
      maximum: 0.9,
      source: commonPractice('the parents take out single ones'),
    },
  },
} satisfies RuleDefinition
