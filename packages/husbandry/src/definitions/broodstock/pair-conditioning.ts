import type { RuleDefinition } from '../../rule/definition.ts'
import { published } from '../../rule/parameters.ts'

export const pairConditioningDefinition = {
  id: 'pair-conditioning',
  title: 'Condition a pair',
  sentence: 'Give a pair that is not brooding {extraFeeds} more feeds a day of fresh food: shrimp, clam, squid.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: false,
  parameters: {
    extraFeeds: {
      type: 'number',
      label: 'more a day',
      unit: 'feeds',
      default: 1,
      minimum: 1,
      maximum: 1,
      source: published(
        '276 eggs on live shrimp, 204 on clam, 110 on dry food alone in A. percula: breeding in brackish water (Chinese J. Oceanol. Limnol.)',
      ),
    },
  },
} satisfies RuleDefinition
