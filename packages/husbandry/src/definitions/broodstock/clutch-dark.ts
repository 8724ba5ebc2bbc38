import type { RuleDefinition } from '../../rule/definition.ts'
import { published } from '../../rule/parameters.ts'

export const clutchDarkDefinition = {
  id: 'clutch-dark',
  title: 'Make it dark',
  sentence:
    'On a night that is at least {fromChance} likely, or while a nest is pulled, make it wholly dark and keep it so.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.2,
      minimum: 0.02,
      maximum: 0.95,
      source: published(
        'no clutch hatched under light at night: Fobert, Burke da Silva & Swearer 2019, Biol. Lett. 15(7) 20190272',
      ),
    },
  },
} satisfies RuleDefinition
