import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const rotiferBackupCheckDefinition = {
  id: 'rotifer-backup-check',
  title: 'Keep the backup apart',
  sentence: 'Check every {everyDays} days that each backup culture has its own tools, air, feed bottle and shelf.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      default: 7,
      source: commonPractice('a second culture with its own tools, air, feed bottle and shelf'),
    }),
  },
} satisfies RuleDefinition
