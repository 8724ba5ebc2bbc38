import { commonPractice } from '../../engine/parameters.ts'
import { cultureById } from '../../state/culture-state.ts'
import { periodicCare } from '../periodic-care.ts'
import { phrase } from '../phrases.ts'

export const rotiferBackupCheck = periodicCare({
  id: 'rotifer-backup-check',
  title: 'Keep the backup apart',
  sentence: 'Check every {everyDays} days that each backup culture has its own tools, air, feed bottle and shelf.',
  subject: 'culture',
  station: 'live_food',
  verb: 'check',
  act: 'check_backup',
  round: 'first',
  everyDays: { default: 7, source: commonPractice('a second culture with its own tools, air, feed bottle and shelf') },
  applies: ({ snapshot, subject }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer' || !culture.isBackup) return null
    return {
      title: 'Check that it stands apart',
      steps: [
        phrase('Its own sieve, brush, beaker and bottle, marked, and used for nothing else.'),
        phrase('Its own air line and valve; not below another culture, not in its splash.'),
        phrase('See to it before any other culture, with clean hands.'),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})

export const rotiferBackupWanted = periodicCare({
  id: 'rotifer-backup-wanted',
  title: 'Start a backup',
  sentence: 'While no rotifer culture is a backup, say so every {everyDays} days.',
  subject: 'room',
  station: 'live_food',
  verb: 'start',
  act: 'check_backup',
  round: 'first',
  everyDays: { default: 7, source: commonPractice('always a second culture as backup') },
  applies: ({ snapshot }) => {
    const rotifers = snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
    if (rotifers.length === 0 || rotifers.some(({ isBackup }) => isBackup)) return null
    return {
      title: 'Start a second rotifer culture as backup',
      steps: [
        phrase('One crash must not take the food of every larva: start a second vessel from the best culture.'),
        phrase('Give it its own tools, air line, feed bottle and shelf, and mark it as backup on its page.'),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})
