import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const rotiferFeedDefinition = {
  id: 'rotifer-feed',
  title: 'Feed the rotifers',
  sentence:
    'Feed every rotifer culture {cellsPerRotiferPerDay} cells a rotifer a day of its concentrate, in {feedsPerDay} feeds, a backup in {backupFeedsPerDay}; follow the look of the water: {followsWater}.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    cellsPerRotiferPerDay: {
      type: 'number',
      label: 'for a full ration',
      unit: 'cells_per_rotifer_per_day',
      default: 75_000,
      minimum: 10_000,
      maximum: 250_000,
      source: published('Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243'),
    },
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('two feeds a day or more'),
    },
    backupFeedsPerDay: {
      type: 'number',
      label: 'a day for a backup',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('fed as often as the others, or it starves between feeds'),
    },
    followsWater: {
      type: 'boolean',
      label: 'less when still green, more when clear and sound',
      default: true,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
