import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const roomDayLengthDefinition = {
  id: 'room-day-length',
  title: 'Check the day length',
  sentence:
    'Check every {everyDays} days that the timers keep the room’s light hours: a changed day length stops pairs.',
  subject: 'room',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({ default: 30, source: commonPractice('timers drift, and clocks change') }),
  },
} satisfies RuleDefinition
