import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalLookDefinition = {
  id: 'larval-look',
  title: 'Look at the larvae',
  sentence:
    'Look at every batch every {everyDays} days: bellies, swimming, bars, bent backs; on days with a siphoning or a water change it is part of that.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next',
      unit: 'days',
      default: 2,
      minimum: 1,
      maximum: 14,
      source: commonPractice('every other day; whoever feeds and siphons sees them daily'),
    },
  },
} satisfies RuleDefinition
