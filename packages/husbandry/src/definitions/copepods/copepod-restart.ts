import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const copepodRestartDefinition = {
  id: 'copepod-restart',
  title: 'Restart the copepods',
  sentence:
    'Move every copepod culture into a clean vessel after {everyDays} days, {keptShare} of its animals; two cultures never within {apartDays} days, and up to {putOffDays} later while small larvae live on it.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one restart to the next',
      unit: 'days',
      default: 42,
      minimum: 7,
      maximum: 365,
      source: commonPractice('every few weeks, later than rotifers: they grow more slowly and are hard to replace'),
    },
    keptShare: {
      type: 'number',
      label: 'of its animals',
      unit: 'share',
      default: 0.5,
      minimum: 0.1,
      maximum: 1,
      source: commonPractice('half; the other half starts a second culture or stays until this one is well'),
    },
    apartDays: {
      type: 'number',
      label: 'between restarts of two cultures',
      unit: 'days',
      default: 7,
      minimum: 0,
      maximum: 60,
      source: commonPractice('a restart that fails must not meet another'),
    },
    putOffDays: {
      type: 'number',
      label: 'while small larvae live on it, at most',
      unit: 'days',
      default: 21,
      minimum: 0,
      maximum: 365,
      source: commonPractice('as long as larvae take to grow to Artemia; a restart halves what they live on'),
    },
  },
} satisfies RuleDefinition
