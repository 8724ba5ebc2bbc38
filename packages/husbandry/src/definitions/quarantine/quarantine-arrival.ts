import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const quarantineArrivalDefinition = {
  id: 'quarantine-arrival',
  title: 'Write down who arrives',
  sentence:
    'While a quarantine tank stands empty ask every {everyDays} days whether fish have come; once they are written down, their care begins.',
  subject: 'tank',
  station: 'quarantine',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      ...{ default: 7, maximum: 90 },
      source: commonPractice('weekly; whoever unpacks fish writes it down at once'),
    }),
  },
} satisfies RuleDefinition
