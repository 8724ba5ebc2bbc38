import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const tankWaterChangeDefinition = {
  id: 'tank-water-change',
  title: 'Change the tanks’ water',
  sentence:
    'Change {share} of the water of every tank with fish every {everyDays} days, matched in salinity and temperature.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one change to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: published('weekly in a pair’s tank (50 %): Dhaneesh et al. 2012, A. akallopisos'),
    },
    share: {
      type: 'number',
      label: 'of the water',
      unit: 'share',
      default: 0.1,
      minimum: 0.02,
      maximum: 0.5,
      source: commonPractice('a tenth a week where a filter runs'),
    },
  },
} satisfies RuleDefinition
