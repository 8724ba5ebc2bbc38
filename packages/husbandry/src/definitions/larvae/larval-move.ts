import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalMoveDefinition = {
  id: 'larval-move',
  title: 'Move settled young',
  sentence:
    'When most of a batch is seen to have settled and takes what it is weaned to, or {afterDays} after it should have been, count it and move it to grow-out.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    afterDays: {
      type: 'number',
      label: 'after it should have settled',
      unit: 'days',
      default: 7,
      minimum: 0,
      maximum: 60,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
