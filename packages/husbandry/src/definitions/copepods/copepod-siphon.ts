import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const copepodSiphonDefinition = {
  id: 'copepod-siphon',
  title: 'Siphon the copepods',
  sentence:
    'Siphon the bottom of every copepod culture every {everyDays} days, and change {share} of its water with it, matched in salinity and temperature.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one siphoning to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: commonPractice('weekly'),
    },
    share: {
      type: 'number',
      label: 'of the water',
      unit: 'share',
      default: 0.2,
      minimum: 0.05,
      maximum: 0.8,
      source: commonPractice('a fifth, as much as a slow siphon takes'),
    },
  },
} satisfies RuleDefinition
