import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const quarantineWatchDefinition = {
  id: 'quarantine-watch',
  title: 'Watch the quarantine',
  sentence:
    'Watch every quarantine tank every {everyDays} days, last on the round, with its own tools; write down every treatment.',
  subject: 'tank',
  station: 'quarantine',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next',
      unit: 'days',
      default: 1,
      minimum: 1,
      maximum: 7,
      source: commonPractice('daily while fish are in it'),
    },
  },
} satisfies RuleDefinition
