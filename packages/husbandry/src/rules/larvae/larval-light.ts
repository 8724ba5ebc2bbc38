import { commonPractice } from '../../engine/parameters.ts'
import { larvalDiet } from '../../state/larval-diet.ts'
import { hours } from '../measures.ts'
import { periodicCare } from '../periodic-care.ts'
import { phrase } from '../phrases.ts'
import { batchById } from './prey-count.ts'

export const larvalLight = periodicCare({
  id: 'larval-light',
  title: 'Check the larvae’s light',
  sentence: 'Check every {everyDays} days that larvae have 1,000-2,000 lux at the surface and 16 hours of light.',
  subject: 'larval_batch',
  station: 'larvae',
  verb: 'check',
  act: 'check_light',
  round: 'middle',
  everyDays: {
    default: 7,
    source: commonPractice(
      'weekly where a timer runs it; 1,000-2,000 lux for A. clarkii larvae (methods of a larval experiment)',
    ),
  },
  applies: ({ snapshot, subject, day }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < 0) return null
    return {
      title: 'Check the light',
      steps: [
        phrase('{from} to {to} at the surface; a little less on the first day.', {
          from: { value: 1000, unit: 'lux' },
          to: { value: 2000, unit: 'lux' },
        }),
        // 16L:8D faster than 12L or 24L in A. melanopus: Arvedlund et al. 2000, Naga 23(2):18-23 (from memory).
        phrase('{hours} of light, dark after that; no glare on one wall.', { hours: hours(16) }),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})
