import { larvalLightDefinition } from '../../definitions/larvae/larval-light.ts'
import { asksForLooks } from '../../plans/larval-look-plan.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { tankLight } from '../../state/tank-light.ts'
import { titled } from '../../task/titles.ts'
import { periodicCare } from '../parts/periodic-care.ts'
import { lightSteps } from './look-parts.ts'

export const larvalLight = periodicCare(larvalLightDefinition, {
  verb: 'check',
  act: 'check_light',
  round: 'middle',
  applies: ({ snapshot, subject, day }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < 0 || asksForLooks(snapshot)) return null
    return {
      title: titled('check', { thing: 'the light' }),
      steps: lightSteps(tankLight(snapshot, tankOf(snapshot, batch))),
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})
