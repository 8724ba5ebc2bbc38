import { daysBetween } from '../../calendar/husbandry-day.ts'
import { commonPractice } from '../../engine/parameters.ts'
import { cultureById, cultureStartDate } from '../../state/culture-state.ts'
import { periodicCare } from '../periodic-care.ts'
import { phrase } from '../phrases.ts'

export const rotiferFilter = periodicCare({
  id: 'rotifer-filter',
  title: 'Clean the culture’s filter',
  sentence: 'Clean the filter of every rotifer culture that has one every {everyDays} days.',
  subject: 'culture',
  station: 'live_food',
  verb: 'clean',
  act: 'clean_filter',
  round: 'first',
  everyDays: { default: 7, source: commonPractice('a filter where there is one is cleaned weekly') },
  applies: ({ snapshot, subject, day }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer' || !culture.hasFilter) return null
    return {
      title: 'Clean the filter',
      steps: [
        phrase('Lift it out slowly, so that what it holds stays in it.'),
        phrase('Rinse it in water of the culture’s salinity, never under the tap, and put it back.'),
        phrase(`Its brush and bucket belong to ${culture.name} alone.`),
      ],
      daysWithout: daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date),
    }
  },
})
