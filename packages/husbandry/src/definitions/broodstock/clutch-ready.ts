import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const clutchReadyDefinition = {
  id: 'clutch-ready',
  title: 'Make ready for the hatch',
  sentence:
    'When the night within {daysAhead} is at least {fromChance} likely, have tank, food and darkness ready, and no filter in it until larvae take Artemia.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    daysAhead: {
      type: 'number',
      label: 'ahead',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 7,
      source: commonPractice('the day before, and on the day'),
    },
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.2,
      minimum: 0.02,
      maximum: 0.95,
      source: commonPractice('one night in five is worth an empty tank'),
    },
  },
} satisfies RuleDefinition
