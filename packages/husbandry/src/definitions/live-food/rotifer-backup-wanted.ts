import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const rotiferBackupWantedDefinition = {
  id: 'rotifer-backup-wanted',
  title: 'Start a backup',
  sentence: 'While no rotifer culture is a backup, say so every {everyDays} days.',
  subject: 'room',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({ default: 7, source: commonPractice('always a second culture as backup') }),
  },
} satisfies RuleDefinition
