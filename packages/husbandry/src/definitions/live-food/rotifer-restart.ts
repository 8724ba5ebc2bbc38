import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const rotiferRestartDefinition = {
  id: 'rotifer-restart',
  title: 'Restart the culture',
  sentence:
    'Restart every rotifer culture in a clean vessel after {everyDays} days, with {keptShare} of its animals; two cultures never within {apartDays} days.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one restart to the next',
      unit: 'days',
      default: 28,
      minimum: 3,
      maximum: 365,
      source: commonPractice('every few weeks'),
    },
    keptShare: {
      type: 'number',
      label: 'of its animals',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 1,
      source: commonPractice('half, so that it stays thick enough to grow on'),
    },
    apartDays: {
      type: 'number',
      label: 'between restarts of two cultures',
      unit: 'days',
      default: 3,
      minimum: 0,
      maximum: 30,
      source: commonPractice('a restart that fails must not meet another'),
    },
  },
} satisfies RuleDefinition
