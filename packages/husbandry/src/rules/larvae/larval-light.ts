import { larvalDiet } from '../../state/larval-diet.ts'
import { periodicCare } from '../periodic-care.ts'
import { asksForLooks, larvalLightId, larvalLightParameters } from '../plans/larval-look-plan.ts'
import { lightSteps } from './look-parts.ts'
import { batchById } from './prey-count.ts'

export const larvalLight = periodicCare({
  id: larvalLightId,
  title: 'Check the larvae’s light',
  sentence:
    'Check every {everyDays} days, with the look at the larvae where there is one, that they have 1,000-2,000 lux at the surface and 16 hours of light.',
  subject: 'larval_batch',
  station: 'larvae',
  verb: 'check',
  act: 'check_light',
  round: 'middle',
  everyDays: larvalLightParameters.everyDays,
  applies: ({ snapshot, subject, day }) => {
    const diet = larvalDiet(batchById(snapshot, subject.id), day.date)
    if (!diet || diet.day < 0 || asksForLooks(snapshot)) return null
    return { title: 'Check the light', steps: lightSteps(), daysWithout: Number.POSITIVE_INFINITY }
  },
})
