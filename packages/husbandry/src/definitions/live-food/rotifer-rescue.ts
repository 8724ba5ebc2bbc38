import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const rotiferRescueDefinition = {
  id: 'rotifer-rescue',
  title: 'Start a crashed culture again',
  sentence:
    'When a rotifer culture has fallen under {crashShare} of its densest count of the last weeks, or under {sickShare} with signs of trouble yesterday and today, empty it and start it again at {startPerMl} from the backup.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    crashShare: {
      type: 'number',
      label: 'of the densest count, crashed under that',
      unit: 'share',
      default: 0.1,
      minimum: 0.01,
      maximum: 0.5,
      source: commonPractice('a tenth of what it was'),
    },
    sickShare: {
      type: 'number',
      label: 'of the densest count, given up under that when it looks sick for a second day',
      unit: 'share',
      default: 0.5,
      minimum: 0.01,
      maximum: 1,
      source: commonPractice('a day is left to nurse it; what goes on dying has lost what a new start would give'),
    },
    startPerMl: {
      type: 'number',
      label: 'rotifers to start with',
      unit: 'per_mL',
      default: 63,
      minimum: 5,
      maximum: 500,
      source: published('50-150 per mL for an inoculum: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361)'),
    },
  },
} satisfies RuleDefinition
