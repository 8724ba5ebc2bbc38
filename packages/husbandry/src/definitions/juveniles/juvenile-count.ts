import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const juvenileCountDefinition = {
  id: 'juvenile-count',
  title: 'Count and grade',
  sentence:
    'Every {everyDays} days count each group and part the large from the small; no more than {fishPerL} fish a litre.',
  subject: 'juvenile_group',
  station: 'juveniles',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one count to the next',
      unit: 'days',
      default: 14,
      minimum: 1,
      maximum: 120,
      source: commonPractice(),
    },
    fishPerL: {
      type: 'number',
      label: 'at most',
      unit: 'per_L',
      default: 0.5,
      minimum: 0.05,
      maximum: 5,
      source: published(
        'all lived at 0.5 per litre in A. percula, the best of 0.5-3: Chambel et al. 2015, SpringerPlus 4:183',
      ),
    },
  },
} satisfies RuleDefinition
