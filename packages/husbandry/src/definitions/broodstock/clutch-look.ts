import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const clutchLookDefinition = {
  id: 'clutch-look',
  title: 'Look at the eggs',
  sentence:
    'Look at every clutch each day from the day after spawning, and say when its night is at least {sayFromChance} likely.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    sayFromChance: {
      type: 'number',
      label: 'chance from which tonight is said',
      unit: 'share',
      default: 0.05,
      minimum: 0.01,
      maximum: 0.9,
      source: commonPractice('one night in twenty is worth knowing of'),
    },
  },
} satisfies RuleDefinition
