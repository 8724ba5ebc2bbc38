import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter, published } from '../../rule/parameters.ts'

export const rotiferBackupWantedDefinition = {
  id: 'rotifer-backup-wanted',
  title: 'Start a backup',
  sentence:
    'While no rotifer culture is a backup, and a sound one older than {fromAgeDays} holds {fromPerMl} or more, start one from it at {startPerMl}; again after {everyDays} where it has to wait.',
  subject: 'room',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({ default: 7, source: commonPractice('always a second culture as backup') }),
    fromAgeDays: {
      type: 'number',
      label: 'youngest age to start one from',
      unit: 'days',
      default: 3,
      minimum: 0,
      maximum: 30,
      source: commonPractice('as for a first harvest'),
    },
    fromPerMl: {
      type: 'number',
      label: 'density to start one from',
      unit: 'per_mL',
      default: 200,
      minimum: 20,
      maximum: 5000,
      source: commonPractice('thick enough that half a day’s worth starts another'),
    },
    startPerMl: {
      type: 'number',
      label: 'rotifers to start with',
      unit: 'per_mL',
      default: 63,
      minimum: 5,
      maximum: 500,
      source: published('50-150 per mL for an inoculum: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361)'),
    },
  },
} satisfies RuleDefinition
