import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory, published } from '../../rule/parameters.ts'

export const juvenileFeedDefinition = {
  id: 'juvenile-feed',
  title: 'Feed the juveniles',
  sentence:
    'Feed every tank of juveniles by number and length: {smallShare} of their weight a day in {smallFeedsPerDay} feeds until {smallUntilMm}, then less and less, down to {shareOfWeight} at {grownAtMm}, in {feedsPerDay} feeds.',
  subject: 'juvenile_group',
  station: 'juveniles',
  isOnByDefault: true,
  parameters: {
    smallFeedsPerDay: {
      type: 'number',
      label: 'a day while small',
      unit: 'feeds',
      default: 4,
      minimum: 1,
      maximum: 8,
      source: commonPractice('three to five while small, in the light, as far as the rounds allow'),
    },
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('two or three for growing fish'),
    },
    smallShare: {
      type: 'number',
      label: 'of their weight a day while small',
      unit: 'share',
      default: 0.1,
      minimum: 0.01,
      maximum: 0.3,
      source: commonPractice('8-10 % of body weight a day for fish of a gram and less'),
    },
    shareOfWeight: {
      type: 'number',
      label: 'of their weight a day once grown',
      unit: 'share',
      default: 0.05,
      minimum: 0.01,
      maximum: 0.2,
      source: published('5 % of body weight a day in two feeds, a pair of A. clarkii: Sarvi & Pourmozaffar'),
    },
    smallUntilMm: {
      type: 'number',
      label: 'long when no longer small',
      unit: 'mm',
      default: 25,
      minimum: 10,
      maximum: 60,
      source: fromMemory('the least length at which they are placed: 2.5-4 cm, extension and textbook range'),
    },
    grownAtMm: {
      type: 'number',
      label: 'long when fed like a pair',
      unit: 'mm',
      default: 50,
      minimum: 15,
      maximum: 120,
      source: published('49.6 mm at half a year, A. clarkii: Cheng, Yeh & Ho 2019, J. Taiwan Fish. Res. 27(2):41-53'),
    },
  },
} satisfies RuleDefinition
