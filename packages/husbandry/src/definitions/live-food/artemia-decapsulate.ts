import type { RuleDefinition } from '../../rule/definition.ts'
import { fromMemory, published } from '../../rule/parameters.ts'

export const artemiaDecapsulateDefinition = {
  id: 'artemia-decapsulate',
  title: 'Decapsulate cysts',
  sentence:
    'Every {everyDays} days decapsulate {cystsG} of cysts, with bleach of {bleachStrength} unless another strength was written down last time, by the published recipe. Only for those who know how.',
  subject: 'room',
  station: 'live_food',
  isOnByDefault: false,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one time to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: published(
        'kept in saturated brine and cold for 1-2 weeks: Larviculture & Artemia Newsletter no. 43, 1997',
      ),
    },
    cystsG: {
      type: 'number',
      label: 'cysts',
      unit: 'g',
      default: 10,
      minimum: 1,
      maximum: 500,
      source: fromMemory('a week of a small room; change it to yours'),
    },
    bleachStrength: {
      type: 'number',
      label: 'strong, by its label',
      unit: 'share',
      default: 0.0525,
      minimum: 0.04,
      maximum: 0.15,
      source: published(
        'Larviculture & Artemia Newsletter (Ghent Univ.) no. 43, 1997: 500 g = 4.77 L of 5.25 % bleach + 75 g NaOH + 2.2 L water',
      ),
    },
  },
} satisfies RuleDefinition
