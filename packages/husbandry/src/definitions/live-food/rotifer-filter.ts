import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const rotiferFilterDefinition = {
  id: 'rotifer-filter',
  title: 'Clean the culture’s filter',
  sentence: 'Clean the filter of every rotifer culture that has one every {everyDays} days.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      default: 7,
      source: commonPractice('a filter where there is one is cleaned weekly'),
    }),
  },
} satisfies RuleDefinition
