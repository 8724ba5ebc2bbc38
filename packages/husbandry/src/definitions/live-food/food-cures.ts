import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

/** What a room chose on the plan of the food. */
export const foodStartCultureDefinition = {
  id: 'food-start-culture',
  title: 'Start a culture that the plan asks for',
  sentence:
    'Where it was chosen on the plan of the food, start a culture on its day, from the culture that the plan names.',
  subject: 'room',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {},
} satisfies RuleDefinition

export const foodBuyInDefinition = {
  id: 'food-buy-in',
  title: 'Buy in rotifers that the plan asks for',
  sentence:
    'Where it was chosen on the plan of the food, order rotifers so that they come on their day, {deliveryDays} after the order; post comes on Saturdays: {comesSaturday}, on Sundays: {comesSunday}.',
  subject: 'room',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    deliveryDays: {
      type: 'number',
      label: 'from the order to the parcel',
      unit: 'days',
      default: 2,
      minimum: 0,
      maximum: 14,
      source: commonPractice('live food by post'),
    },
    comesSaturday: {
      type: 'boolean',
      label: 'parcels come on Saturdays',
      default: false,
      source: commonPractice('live animals are not sent over a weekend'),
    },
    comesSunday: {
      type: 'boolean',
      label: 'parcels come on Sundays',
      default: false,
      source: commonPractice('live animals are not sent over a weekend'),
    },
  },
} satisfies RuleDefinition

export const foodKeepLarvaeDefinition = {
  id: 'food-keep-larvae',
  title: 'Keep so many larvae as the plan can feed',
  sentence: 'Where it was chosen on the plan of the food, keep so many larvae of a batch and part with the rest.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {},
} satisfies RuleDefinition
