import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalSiphonDefinition = {
  id: 'larval-siphon',
  title: 'Siphon the bottom',
  sentence:
    'From day {fromDay} siphon the bottom of every larval tank daily, and count the dead; on days with a water change it is part of that.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    fromDay: {
      type: 'number',
      label: 'old when it begins',
      unit: 'days',
      default: 2,
      minimum: 0,
      maximum: 30,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
