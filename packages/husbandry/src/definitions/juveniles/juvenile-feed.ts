import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const juvenileFeedDefinition = {
  id: 'juvenile-feed',
  title: 'Feed the juveniles',
  sentence: 'Feed every group {shareOfWeight} of its weight a day in {feedsPerDay} feeds, by its number and age.',
  subject: 'juvenile_group',
  station: 'juveniles',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('two or three for growing fish'),
    },
    shareOfWeight: {
      type: 'number',
      label: 'of their weight a day',
      unit: 'share',
      default: 0.05,
      minimum: 0.01,
      maximum: 0.2,
      source: published('5 % of body weight a day in two feeds, A. clarkii: Sarvi & Pourmozaffar'),
    },
  },
} satisfies RuleDefinition
