import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const roomToolsDefinition = {
  id: 'room-tools',
  title: 'Disinfect the tools',
  sentence:
    'Disinfect nets, sieves, hoses and beakers every {everyDays} days, and between stations whenever one must be shared.',
  subject: 'room',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      default: 7,
      source: commonPractice('each station its own tools; a weekly bath for all'),
    }),
  },
} satisfies RuleDefinition
