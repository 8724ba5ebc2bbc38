import type { RuleDefinition } from '../../rule/definition.ts'
import { fromMemory } from '../../rule/parameters.ts'

export const clutchSecondNightDefinition = {
  id: 'clutch-second-night',
  title: 'The second night',
  sentence:
    'When a part of a clutch is left after its night, in the nest or with the parent, wait {nights} more, and say in the morning what came.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    nights: {
      type: 'number',
      label: 'more',
      unit: 'nights',
      default: 1,
      minimum: 0,
      maximum: 3,
      source: fromMemory('most of a clutch in one evening, the remainder the next: Hoff 1996; Wilkerson 1998'),
    },
  },
} satisfies RuleDefinition
