import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const tankWaterChangeDefinition = {
  id: 'tank-water-change',
  title: 'Change the tanks’ water',
  sentence:
    'Every {everyDays} days change {share} of the water of every tank with fish, {unfilteredShare} where no filter runs, matched in salinity and temperature.',
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
  },
} satisfies RuleDefinition
