import type { RuleDefinition } from '../../rule/definition.ts'
import { fromMemory, published } from '../../rule/parameters.ts'

const recipe =
  'Larviculture & Artemia Newsletter (Ghent Univ.) no. 43, 1997: 500 g = 4.77 L of 5.25 % bleach + 75 g NaOH + 2.2 L water'

export const artemiaDecapsulateDefinition = {
  id: 'artemia-decapsulate',
  title: 'Decapsulate cysts',
  sentence:
    'Every {everyDays} days decapsulate {cystsG} of cysts, with {bleachMlPerG} of bleach, {sodaGPerG} of caustic soda and {waterMlPerG} of water a gram. Only for those who know how.',
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
    bleachMlPerG: {
      type: 'number',
      label: 'of 5.25 % bleach to each of cysts',
      unit: 'mL',
      default: 9.54,
      minimum: 1,
      maximum: 20,
      source: published(recipe),
    },
    sodaGPerG: {
      type: 'number',
      label: 'of caustic soda to each of cysts',
      unit: 'g',
      default: 0.15,
      minimum: 0.05,
      maximum: 1,
      source: published(recipe),
    },
    waterMlPerG: {
      type: 'number',
      label: 'of water to each of cysts',
      unit: 'mL',
      default: 4.4,
      minimum: 0,
      maximum: 20,
      source: published(recipe),
    },
  },
} satisfies RuleDefinition
