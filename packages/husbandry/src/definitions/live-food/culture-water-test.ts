import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const cultureWaterTestDefinition = {
  id: 'culture-water-test',
  title: 'Test the cultures’ water',
  sentence:
    'Test ammonia, pH, salinity and oxygen of every rotifer culture every {everyDays} days; the day after whenever something was wrong, and in the next round once its water was changed.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      ...{ default: 7, maximum: 60, label: 'from one test to the next' },
      source: commonPractice('weekly'),
    }),
  },
} satisfies RuleDefinition
