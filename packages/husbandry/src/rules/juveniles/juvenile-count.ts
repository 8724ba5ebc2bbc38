import { daysBetween } from '../../calendar/husbandry-day.ts'
import { middleRound } from '../../calendar/rounds.ts'
import { juvenileCountDefinition } from '../../definitions/juveniles/juvenile-count.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { groupById } from '../../snapshot/by-id.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { animals, litres } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'

export const juvenileCount = defineRule(juvenileCountDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const group = groupById(snapshot, subject.id)
    const number = groupNumbers(snapshot, group).now
    if (number === 0) return []
    const last = factsUntil(snapshot, 'count', { subjectId: group.id, until: day.endsAt }).findLast(
      ({ data }) => data.of === 'juveniles',
    )
    const since = daysSince(snapshot, last, day.date) ?? daysBetween(group.settledOn, day.date)
    if (since < parameters.everyDays) return []
    const tank = tankOf(snapshot, group)
    const roomFor = tank ? Math.floor(parameters.fishPerL * tank.volumeL) : null
    const isCrowded = number !== null && roomFor !== null && number > roomFor
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'count',
          title: titled('count', { thing: 'and grade' }),
          steps: [
            phrase('Count them as they pass from one cup to another, twice.'),
            phrase('The largest third apart from the smallest third: the small ones grow when they are left alone.'),
            ...(isCrowded && tank
              ? [phrase(`${tank.name} holds {most} at most: move some on.`, { most: animals(roomFor) })]
              : []),
            phrase('Sick or bent ones to a tank of their own, and written down.'),
          ],
          fields: [
            numberField({
              name: 'number',
              label: 'Fish',
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              likely: number === null ? [1, 2000] : [Math.max(1, number * 0.7), number * 1.05],
            }),
            noteField(),
          ],
          because: [
            last
              ? factLink(last, { label: 'last counted' })
              : settingLink(group.id, 'settled on', { label: 'settled', text: group.settledOn }),
            parameter('everyDays', 'and'),
            ...(tank
              ? [
                  settingLink(tank.id, 'volume', {
                    label: `in ${tank.name}`,
                    quantity: litres(tank.volumeL),
                    joins: 'and' as const,
                  }),
                  parameter('fishPerL', 'times'),
                ]
              : []),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const number = Math.round(numberOf(values, 'number') ?? 0)
    const note = textOf(values, 'note')
    return {
      facts: [
        { kind: 'count', subjectId, data: { of: 'juveniles', animals: [number] } },
        ...(note ? [{ kind: 'observation' as const, subjectId, data: { note } }] : []),
      ],
    }
  },
})
