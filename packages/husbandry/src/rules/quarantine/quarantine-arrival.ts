import { lastRound } from '../../calendar/rounds.ts'
import { quarantineArrivalDefinition } from '../../definitions/quarantine/quarantine-arrival.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { daysSince } from '../../state/day-facts.ts'
import { holdsFish } from '../../state/tank-fish.ts'
import { fishWaterCautions } from '../../task/cautions.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { given, numberOf, textOf } from '../../task/values.ts'

export const quarantineArrival = defineRule(quarantineArrivalDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (tank.kind !== 'quarantine' || holdsFish(snapshot, tank, day)) return []
    const last = lastCare(snapshot, 'quarantine_empty', { subjectId: tank.id, day })
    const since = daysSince(snapshot, last, day.date)
    if (since !== null && since < parameters.everyDays) return []
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'check',
          title: titled('check', { thing: 'whether fish have come' }),
          steps: [
            phrase('None in it? Write 0: nothing more is asked about this tank.'),
            phrase(
              'Just come? Leave the bag closed and the lights low, write them down here, and do what is asked next.',
            ),
            phrase('The bag’s litres say how much water is added each time; its salinity, how far they have to go.'),
          ],
          cautions: fishWaterCautions,
          fields: [
            numberField({
              name: 'number',
              label: 'Fish in it',
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 10_000,
              likely: [0, 50],
            }),
            numberField({
              name: 'bagL',
              label: 'Water they came in',
              help: 'All bags together. Leave empty when they are in the tank already.',
              unit: 'L',
              minimum: 0.05,
              maximum: 1000,
              likely: [0.2, 50],
              step: 0.1,
            }),
            numberField({
              name: 'bagSalinity',
              label: 'Its salinity',
              unit: 'psu',
              minimum: 0,
              maximum: 45,
              likely: [25, 36],
              step: 0.5,
            }),
            noteField('What they are, and from where'),
          ],
          because: [
            settingLink(tank.id, 'kind', { label: 'kind of tank', text: 'quarantine' }),
            ...(last ? [factLink(last, { label: 'last found empty', joins: 'and' as const })] : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const number = Math.round(numberOf(values, 'number') ?? 0)
    const note = textOf(values, 'note')
    const came = given({ litres: numberOf(values, 'bagL'), salinity: numberOf(values, 'bagSalinity'), note })
    return {
      facts: [
        number > 0
          ? { kind: 'care', subjectId, data: { act: 'fish_arrived', number, ...came } }
          : { kind: 'care', subjectId, data: { act: 'quarantine_empty', ...given({ note }) } },
      ],
    }
  },
})
