import { daysBetween } from '../../calendar/husbandry-day.ts'
import { rotiferFilterDefinition } from '../../definitions/live-food/rotifer-filter.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { cultureStartDate } from '../../state/culture-state.ts'
import { phrase } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { periodicCare } from '../parts/periodic-care.ts'

export const rotiferFilter = periodicCare(rotiferFilterDefinition, {
  verb: 'clean',
  act: 'clean_filter',
  round: 'after-morning',
  applies: ({ snapshot, subject, day }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer' || !culture.hasFilter) return null
    return {
      title: titled('clean', { thing: 'the filter' }),
      steps: [
        phrase('Lift it out slowly, so that what it holds stays in it.'),
        phrase('Rinse it in water of the culture’s salinity, never under the tap, and put it back.'),
        phrase(`Its brush and bucket belong to ${culture.name} alone.`),
      ],
      daysWithout: daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date),
    }
  },
})
