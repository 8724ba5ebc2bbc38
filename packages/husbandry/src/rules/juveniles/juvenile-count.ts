import type { Phrase } from '@fryward/shared'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { middleRound } from '../../calendar/rounds.ts'
import { juvenileCountDefinition } from '../../definitions/juveniles/juvenile-count.ts'
import { fishIn } from '../../plans/grow-out-room.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { groupById } from '../../snapshot/by-id.ts'
import { growthOf, usualLengthsMm } from '../../species/juvenile-growth.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { type JuvenileSize, juvenileSize } from '../../state/juvenile-growth.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { deformedField, lengthField, noteField, numberField } from '../../task/fields.ts'
import { animals, litres } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { youngWords } from '../../task/young.ts'
import { headCountFacts } from '../parts/head-count.ts'

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
    const size = juvenileSize(snapshot, group, day)
    const growth = growthOf(group.species)
    const usual = usualLengthsMm(growth, size.ageDays)
    const there = tank ? fishIn(snapshot, tank) : 0
    const isCrowded = roomFor !== null && there > roomFor
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'count',
          title: titled('count', { thing: 'and grade' }),
          steps: [
            phrase('Count them as they pass from one cup to another, twice.'),
            ...lengthSteps(size, usual),
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
            lengthField(usual),
            deformedField(youngWords(group).deformed),
            noteField(),
          ],
          because: [
            last
              ? factLink(last, { label: 'last counted' })
              : settingLink(group.id, 'settled on', { label: 'settled', text: group.settledOn }),
            parameter('everyDays', 'and'),
            computedLink('lengths at that age', growth.lengths.source.citation, {
              label: 'usual at their age',
              text: `${Math.round(usual.from)} to ${Math.round(usual.to)} mm`,
              joins: 'and',
            }),
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
  record: ({ values, subjectId }) => ({ facts: headCountFacts(subjectId, 'juveniles', values) }),
})

/** Five to a ruler; and what to do for those that stayed small. */
function lengthSteps({ lengthMm, measured }: JuvenileSize, usual: { from: number; to: number }): Phrase[] {
  const isSmall = measured !== null && lengthMm < usual.from
  return [
    phrase('Hold five of them in a glass to a ruler, nose to tail: {from} to {to} is usual at their age.', {
      from: { value: Math.round(usual.from), unit: 'mm' },
      to: { value: Math.round(usual.to), unit: 'mm' },
    }),
    ...(isSmall
      ? [phrase('They were small for their age when last measured: more feeds, fewer fish to the litre, water tested.')]
      : []),
  ]
}
