import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalAmmoniaTestDefinition = {
  id: 'larval-ammonia-test',
  title: 'Test the larvae’s water',
  sentence:
    'From day {fromDay} test ammonia, pH and temperature in every larval tank every {everyDays} days, and again in the next round after water was changed against ammonia.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    fromDay: {
      type: 'number',
      label: 'old at the first test',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 30,
      source: commonPractice(),
    },
    everyDays: {
      type: 'number',
      label: 'from one test to the next',
      unit: 'days',
      default: 2,
      minimum: 1,
      maximum: 14,
      source: commonPractice('every other day where water is changed daily'),
    },
  },
} satisfies RuleDefinition
