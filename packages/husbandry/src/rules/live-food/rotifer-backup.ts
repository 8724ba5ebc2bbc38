import { rotiferBackupCheckDefinition } from '../../definitions/live-food/rotifer-backup-check.ts'
import { rotiferBackupWantedDefinition } from '../../definitions/live-food/rotifer-backup-wanted.ts'
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

export const rotiferBackupWanted = periodicCare(rotiferBackupWantedDefinition, {
  verb: 'start',
  act: 'check_backup',
  round: 'first',
  applies: ({ snapshot }) => {
    const rotifers = snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
    if (rotifers.length === 0 || rotifers.some(({ isBackup }) => isBackup)) return null
    return {
      title: titled('start', { thing: 'a second rotifer culture as backup' }),
      steps: [
        phrase('One crash must not take the food of every larva: start a second vessel from the best culture.'),
        phrase('Give it its own tools, air line, feed bottle and shelf, and mark it as backup on its page.'),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})
