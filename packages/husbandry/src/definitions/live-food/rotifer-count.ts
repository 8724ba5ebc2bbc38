import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const rotiferCountDefinition = {
  id: 'rotifer-count',
  title: 'Count the rotifers',
  sentence:
    'Count every rotifer culture with its eggs in {replicates} samples every {everyDays} days, daily while it is younger than {dailyUntilAgeDays} days, harvested or feeding larvae; a backup every {backupEveryDays} days.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one count to the next',
      unit: 'days',
      default: 2,
      minimum: 1,
      maximum: 14,
      source: commonPractice(),
    },
    dailyUntilAgeDays: {
      type: 'number',
      label: 'old: counted daily until then',
      unit: 'days',
      default: 7,
      minimum: 0,
      maximum: 60,
      source: commonPractice(),
    },
    backupEveryDays: {
      type: 'number',
      label: 'from one count of a backup to the next',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 14,
      source: commonPractice(),
    },
    replicates: {
      type: 'number',
      label: 'of 1 mL',
      unit: 'samples',
      default: 3,
      minimum: 1,
      maximum: 10,
      source: published('mean of three samples in 1-mL cells: Pfeiffer & Ludwig 2002, WAS abstract p. 264'),
    },
  },
} satisfies RuleDefinition
