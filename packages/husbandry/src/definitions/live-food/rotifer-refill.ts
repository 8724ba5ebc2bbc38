import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const rotiferRefillDefinition = {
  id: 'rotifer-refill',
  title: 'Refill the rotifers',
  sentence:
    'Bring a culture back to its mark with new water of its own salinity and temperature, together with its harvest, or whenever {worthL} or more is missing.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    worthL: {
      type: 'number',
      label: 'worth a refill',
      unit: 'L',
      default: 0.1,
      minimum: 0.01,
      maximum: 20,
      source: commonPractice('a jug’s mark'),
    },
  },
} satisfies RuleDefinition
