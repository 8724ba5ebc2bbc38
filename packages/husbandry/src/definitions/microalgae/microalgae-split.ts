import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const microalgaeSplitDefinition = {
  id: 'microalgae-split',
  title: 'Split the microalgae',
  sentence:
    'Every {everyDays} days take {share} of a microalgae culture that is not pale, with what was fed from it, and fill it up with new, sterile, fertilised water; sooner once so much was fed.',
  subject: 'culture',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one split to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: commonPractice('about weekly, in full growth'),
    },
    share: {
      type: 'number',
      label: 'of the culture',
      unit: 'share',
      default: 0.5,
      minimum: 0.1,
      maximum: 0.9,
      source: commonPractice('half, so that it stays dense enough to outgrow what drifts in'),
    },
  },
} satisfies RuleDefinition
