import { COLD_STORE } from '@fryward/live-feed'
import type { RuleDefinition } from '../../rule/definition.ts'
import { published } from '../../rule/parameters.ts'

export const artemiaDiscardDefinition = {
  id: 'artemia-discard',
  title: 'Discard old nauplii',
  sentence: 'Discard nauplii that have been in the cold for {coldHours}: they starve and are no food.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    coldHours: {
      type: 'number',
      label: 'in the cold at most',
      unit: 'hours',
      default: COLD_STORE.longestHours,
      minimum: 1,
      maximum: 48,
      source: published('under 10 °C, up to 24 h: Ghent Univ. shrimp nutrition course, Artemia cold storage'),
    },
  },
} satisfies RuleDefinition
