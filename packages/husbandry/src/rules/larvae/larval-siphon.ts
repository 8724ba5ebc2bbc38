import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, settingLink } from '../../engine/rule.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { noteField, numberField } from '../fields.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import { numberOf, textOf } from '../values.ts'
import { batchById } from './prey-count.ts'

export const larvalSiphon = defineRule({
  id: 'larval-siphon',
  title: 'Siphon the bottom',
  sentence: 'From day {fromDay} siphon the bottom of every larval tank daily, and count the dead.',
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
    if (siphoned) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'siphon',
          title: phrase('Siphon the bottom, count the dead'),
          steps: [
            phrase('Air low, light at one end; siphon with a thin hose into a white bowl.'),
            phrase('Count the dead in the bowl; put back what swims.'),
            phrase('Bent backs, open gills or missing fins among them: say so.'),
          ],
          fields: [
            numberField({
              name: 'dead',
              label: 'Dead larvae',
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              likely: [0, 100],
              usual: 0,
            }),
            numberField({
              name: 'deformed',
              label: 'Deformed among them',
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              likely: [0, 20],
              usual: 0,
            }),
            noteField(),
          ],
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            parameter('fromDay', 'and'),
          ],
        }),
        context: { tankId: tank.id },
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const dead = Math.round(numberOf(values, 'dead') ?? 0)
    const deformed = Math.round(numberOf(values, 'deformed') ?? 0)
    const note = [deformed > 0 ? `${deformed} deformed.` : '', textOf(values, 'note') ?? ''].join(' ').trim()
    return {
      facts: [
        { kind: 'care', subjectId, data: { act: 'siphon_bottom', ...(note ? { note } : {}) } },
        ...(dead > 0 ? [{ kind: 'loss', subjectId, data: { number: dead, of: 'larvae' } } as const] : []),
      ],
    }
  },
})
