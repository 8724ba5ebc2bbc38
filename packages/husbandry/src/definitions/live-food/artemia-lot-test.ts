import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const artemiaLotTestDefinition = {
  id: 'artemia-lot-test',
  title: 'Test the tin of cysts',
  sentence:
    'Every {everyDays} days test how many nauplii a gram of cysts gives; a new tin, of which the list does not know, as you open it.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one test to the next',
      unit: 'days',
      default: 90,
      minimum: 7,
      maximum: 366,
      source: commonPractice('an open tin loses; lots differ'),
    },
  },
} satisfies RuleDefinition
