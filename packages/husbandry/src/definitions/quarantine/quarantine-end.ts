import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const quarantineEndDefinition = {
  id: 'quarantine-end',
  title: 'End the quarantine',
  sentence:
    'When {days} have passed since the last fish came, and {quietDays} since the last sign of sickness, treatment or death, ask whether quarantine is over; again after {againDays} when it goes on.',
  subject: 'tank',
  station: 'quarantine',
  isOnByDefault: true,
  parameters: {
    days: {
      type: 'number',
      label: 'in quarantine',
      unit: 'days',
      default: 30,
      minimum: 7,
      maximum: 120,
      source: commonPractice('four weeks or more'),
    },
    quietDays: {
      type: 'number',
      label: 'without a sign',
      unit: 'days',
      default: 14,
      minimum: 1,
      maximum: 60,
      source: commonPractice('two weeks after the last sign or treatment'),
    },
    againDays: {
      type: 'number',
      label: 'until it is asked again',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
