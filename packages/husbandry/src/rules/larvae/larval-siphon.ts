import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, settingLink } from '../../engine/rule.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { phrase, taskContent } from '../phrases.ts'
import { larvalChange } from '../plans/change-plan.ts'
import { firstRound } from '../rounds.ts'
import { siphonFacts, siphonFields, siphonSteps } from './bottom-siphon.ts'
import { batchById } from './prey-count.ts'

export const larvalSiphon = defineRule({
  id: 'larval-siphon',
  title: 'Siphon the bottom',
  sentence:
    'From day {fromDay} siphon the bottom of every larval tank daily, and count the dead; on days with a water change it is part of that.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    fromDay: {
      type: 'number',
      label: 'old when it begins',
      unit: 'days',
      default: 2,
      minimum: 0,
      maximum: 30,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    const tank = tankOf(snapshot, batch)
    if (!diet || !tank || diet.day < parameters.fromDay) return []
    const siphoned = factsOnDay(snapshot, 'care', { subjectId: batch.id, day }).some(
      ({ data }) => data.act === 'siphon_bottom',
    )
    // Whoever changes the water takes it from the bottom: the change asks for the dead itself.
    if (siphoned || larvalChange(snapshot, batch, day)) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'siphon',
          title: phrase('Siphon the bottom, count the dead'),
          steps: siphonSteps(),
          fields: siphonFields(),
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            parameter('fromDay', 'and'),
          ],
        }),
        context: { tankId: tank.id },
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: siphonFacts(subjectId, values) }),
})
