import type { RuleDefinition } from '../../rule/definition.ts'
import { published } from '../../rule/parameters.ts'

export const clutchWatchDefinition = {
  id: 'clutch-watch',
  title: 'Watch the hatch',
  sentence:
    'On a night that is at least {fromChance} likely, look in the dark an hour or two after lights off. Eggs that float hatch at any hour, and are not watched.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 0.95,
      source: published('hatching 0-3 h after lights off: Dhaneesh et al. 2012, A. akallopisos'),
    },
  },
} satisfies RuleDefinition
