import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const tankWaterTestDefinition = {
  id: 'tank-water-test',
  title: 'Test the water',
  sentence:
    'Test temperature, salinity, pH, ammonia, nitrite and nitrate of every tank with fish every {everyDays} days; sooner while ammonia or nitrite was read.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      ...{ default: 7, maximum: 60, label: 'from one test to the next' },
      source: commonPractice('weekly'),
    }),
  },
} satisfies RuleDefinition
