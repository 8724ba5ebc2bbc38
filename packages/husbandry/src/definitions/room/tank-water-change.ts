import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const tankWaterChangeDefinition = {
  id: 'tank-water-change',
  title: 'Change the tanks’ water',
  sentence:
    'Every {everyDays} days change {share} of the water of every tank with fish, {unfilteredShare} where no filter runs, matched in salinity and temperature. What would be more than {mostLitres} in a day waits, by {lateDays} at most.',
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
      source: published('weekly in a pair’s tank: Dhaneesh et al. 2012, A. akallopisos'),
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
    unfilteredShare: {
      type: 'number',
      label: 'of the water where no filter runs',
      unit: 'share',
      default: 0.5,
      minimum: 0.02,
      maximum: 0.8,
      source: published('50 % weekly in a pair’s tank: Dhaneesh et al. 2012, A. akallopisos'),
    },
    mostLitres: {
      type: 'number',
      label: 'in one day',
      unit: 'L',
      default: 100,
      minimum: 5,
      maximum: 5000,
      source: commonPractice('what one person mixes, warms and carries beside the rest'),
    },
    lateDays: {
      type: 'number',
      label: 'late at most',
      unit: 'days',
      default: 2,
      minimum: 0,
      maximum: 14,
      source: commonPractice('a weekly change does not hang on a day or two'),
    },
  },
} satisfies RuleDefinition
