import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const rotiferBrushDefinition = {
  id: 'rotifer-brush',
  title: 'Brush the walls',
  sentence:
    'Brush the walls of every rotifer culture every {everyDays} days; on days with a first feed it is part of that.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one brushing to the next',
      unit: 'days',
      default: 1,
      minimum: 1,
      maximum: 14,
      source: commonPractice('feeding and brushing are daily'),
    },
  },
} satisfies RuleDefinition
