import { cultureWaterTestDefinition } from '../../definitions/live-food/culture-water-test.ts'
import { cultureTestDue } from '../../plans/culture-water-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { numberField, salinityField, temperatureField } from '../../task/fields.ts'
import { psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { waterTestFacts } from '../parts/water-test.ts'

export const cultureWaterTest = defineRule(cultureWaterTestDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const due = cultureTestDue(snapshot, culture, day)
    if (!due) return []
    const { round, last, isRetest } = due
    return [
      {
        roundId: round.id,
        ...(isRetest ? { lateAfterMinutes: 60 } : {}),
        content: taskContent({
          verb: 'test',
          title: titled('test', { thing: isRetest ? 'the water again' : 'the water' }),
          steps: [
            phrase('Before feeding, in a cup through a fine sieve: algae and animals colour a test.'),
            phrase('What you did not measure stays empty; ammonia as nitrogen (N), as the kit’s card says.'),
            phrase('Salinity over {salinity}? Water has evaporated: fill up with fresh water, slowly, to the mark.', {
              salinity: psu(culture.salinity + 1),
            }),
          ],
          fields: testFields(culture),
          because: [
            last
              ? factLink(last.fact, { label: 'last tested' })
              : settingLink(culture.id, 'water tests', { label: 'tests so far', text: 'none' }),
            ...(last?.change && isRetest
              ? [factLink(last.change, { label: 'water changed since', joins: 'and' as const })]
              : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: waterTestFacts(subjectId, values) }),
})

/** A fed culture reads more ammonia and less of all else than a tank does. */
const testFields = (culture: SnapshotCulture) => [
  numberField({
    name: 'totalAmmoniaNMgPerL',
    label: 'Total ammonia (as N)',
    isRequired: true,
    unit: 'mg_per_L',
    minimum: 0,
    maximum: 100,
    likely: [0, 20],
    step: 0.1,
  }),
  numberField({ name: 'pH', label: 'pH', unit: 'pH', minimum: 4, maximum: 11, likely: [6.5, 8.5], step: 0.1 }),
  salinityField(culture.salinity),
  numberField({
    name: 'oxygenMgPerL',
    label: 'Oxygen',
    unit: 'mg_per_L',
    minimum: 0,
    maximum: 30,
    likely: [3, 9],
    step: 0.1,
  }),
  temperatureField(culture.temperatureC),
]
