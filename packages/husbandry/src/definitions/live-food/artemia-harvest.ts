import { COLD_STORE } from '@fryward/live-feed'
import type { RuleDefinition } from '../../rule/definition.ts'
import { published } from '../../rule/parameters.ts'

export const artemiaHarvestDefinition = {
  id: 'artemia-harvest',
  title: 'Harvest the Artemia',
  sentence:
    'Harvest the nauplii when they have hatched, leave the shells behind, and keep them cold for at most {coldHours}.',
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
      source: published('under 10 °C, up to 8 million per L, up to 24 h: Ghent Univ. shrimp nutrition course'),
    },
  },
} satisfies RuleDefinition
