import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const pairFeedDefinition = {
  id: 'pair-feed',
  title: 'Feed the pairs',
  sentence:
    'Feed every pair in {feedsPerDay} feeds a day, as much as they clear in {minutes}; a resting pair in {restingFeedsPerDay} feeds. Frozen and dry food by turns: {varied}.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: published(
        '3-5 % of body weight a day in 2 feeds, black A. ocellaris: Raheem et al. c. 2021, Indian J. Fish.',
      ),
    },
    restingFeedsPerDay: {
      type: 'number',
      label: 'a day while resting',
      unit: 'feeds',
      default: 1,
      minimum: 1,
      maximum: 8,
      source: commonPractice(),
    },
    minutes: {
      type: 'number',
      label: 'until it is cleared',
      unit: 'minutes',
      default: 2,
      minimum: 1,
      maximum: 15,
      source: commonPractice(),
    },
    varied: { type: 'boolean', label: 'frozen and dry by turns', default: true, source: commonPractice() },
  },
} satisfies RuleDefinition
