import { rotiferBackupCheckDefinition } from '../../definitions/live-food/rotifer-backup-check.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { phrase } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { periodicCare } from '../parts/periodic-care.ts'

export const rotiferBackupCheck = periodicCare(rotiferBackupCheckDefinition, {
  verb: 'check',
  act: 'check_backup',
  round: 'after-morning',
  applies: ({ snapshot, subject }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer' || !culture.isBackup) return null
    return {
      title: titled('check', { thing: 'that it stands apart' }),
      steps: [
        phrase('Its own sieve, brush, beaker and bottle, marked, and used for nothing else.'),
        phrase('Its own air line and valve; not below another culture, not in its splash.'),
        phrase('See to it before any other culture, with clean hands.'),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})
