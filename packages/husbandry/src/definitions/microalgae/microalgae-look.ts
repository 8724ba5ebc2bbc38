import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const microalgaeLookDefinition = {
  id: 'microalgae-look',
  title: 'Look at the microalgae',
  sentence:
    'Swirl every microalgae culture and look at its colour every {everyDays} days, before any animal’s water is touched.',
  subject: 'culture',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next',
      unit: 'days',
      default: 1,
      minimum: 1,
      maximum: 7,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
