import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const tankTopUpDefinition = {
  id: 'tank-top-up',
  title: 'Top up what evaporated',
  sentence:
    'Every {everyDays} days top every tank with fish up to its mark with fresh water; by its salinity where that was read in the last {readWithinDays} days.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one top-up to the next',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 14,
      source: fromMemory('about 1 % a day evaporates: in three days 35 becomes 36, as far as new water may be off'),
    },
    readWithinDays: {
      type: 'number',
      label: 'since the reading at most',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 7,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
