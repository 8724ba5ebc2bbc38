import { middleRound } from '../../calendar/rounds.ts'
import { quarantineEndDefinition } from '../../definitions/quarantine/quarantine-end.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { daysSince } from '../../state/day-facts.ts'
import { arrivalIn, lastSickness } from '../../state/quarantine-state.ts'
import { disinfectionCautions } from '../../task/cautions.ts'
import { choiceField, noteField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, given, textOf } from '../../task/values.ts'

const answers = ['moved', 'stay'] as const

export const quarantineEnd = defineRule(quarantineEndDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    const arrival = arrivalIn(snapshot, tank, day)
    if (!arrival || (daysSince(snapshot, arrival, day.date) ?? 0) < parameters.days) return []
    const sick = lastSickness(snapshot, tank, { since: arrival.at, day })
    if (sick && (daysSince(snapshot, sick, day.date) ?? 0) < parameters.quietDays) return []
    const kept = lastCare(snapshot, 'quarantine_goes_on', { subjectId: tank.id, day })
    const sinceKept = daysSince(snapshot, kept, day.date)
    if (kept && kept.at > arrival.at && sinceKept !== null && sinceKept < parameters.againDays) return []
    return [
      {
        roundId: middleRound(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'decide',
          title: titled('check', { thing: 'whether quarantine is over' }),
          steps: [
            phrase('All of them eat, breathe calmly, and show no spot, wound or worn fin? Then it is over.'),
            phrase('Bring the water of both tanks within 1 of each other in salinity and warmth before they move.'),
            phrase('Move them with a cup or a net of its own; none of this water goes along.'),
            phrase('Then empty, disinfect, rinse and dry the tank and all that belongs to it.'),
          ],
          cautions: disinfectionCautions,
          fields: [
            choiceField({
              name: 'answer',
              label: 'Quarantine',
              isRequired: true,
              choices: [
                { value: 'moved', label: 'over: all are out of this tank' },
                { value: 'stay', label: 'goes on' },
              ],
            }),
            noteField('Where they went, or why they stay'),
          ],
          because: [
            factLink(arrival, { label: 'last fish came' }),
            parameter('days', 'and'),
            ...(sick ? [factLink(sick, { label: 'last sign of sickness', joins: 'and' as const })] : []),
            parameter('quietDays', 'and'),
            parameter('againDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const act = choiceOf(values, 'answer', answers) === 'moved' ? 'quarantine_empty' : 'quarantine_goes_on'
    return { facts: [{ kind: 'care', subjectId, data: { act, ...given({ note: textOf(values, 'note') }) } }] }
  },
})
