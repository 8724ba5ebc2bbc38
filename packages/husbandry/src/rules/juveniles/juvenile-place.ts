import { middleRound } from '../../calendar/rounds.ts'
import { juvenilePlaceDefinition } from '../../definitions/juveniles/juvenile-place.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { groupById } from '../../snapshot/by-id.ts'
import { growthOf, ownMm } from '../../species/juvenile-growth.ts'
import { weanedFoodOf } from '../../species/weaned-food.ts'
import { lastCare } from '../../state/care.ts'
import { daysSince } from '../../state/day-facts.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { juvenileSize } from '../../state/juvenile-growth.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { foodName } from '../../task/foods.ts'
import { animals, days } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { given, numberOf, textOf } from '../../task/values.ts'

export const juvenilePlace = defineRule(juvenilePlaceDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const group = groupById(snapshot, subject.id)
    const number = groupNumbers(snapshot, group).now
    if (number === 0) return []
    const size = juvenileSize(snapshot, group, day)
    const growth = growthOf(group.species)
    const fromMm = ownMm(growth, parameters.fromMm)
    if (size.lengthMm < fromMm) return []
    const last = lastCare(snapshot, 'looked_to_place', { subjectId: group.id, day })
    const since = daysSince(snapshot, last, day.date)
    if (since !== null && since < parameters.everyDays) return []
    const lengthMm = { value: Math.round(size.lengthMm), unit: 'mm' as const }
    return [
      {
        roundId: middleRound(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'look',
          title: titled('look_for', { thing: 'fish that can be placed' }),
          steps: [
            phrase(
              `Those that take ${foodName(weanedFoodOf(group.species))} in front of you, are straight, whole and {from} or longer.`,
              {
                from: { value: Math.round(fromMm), unit: 'mm' },
              },
            ),
            phrase('Into a tank or a floating box of their own, unfed for {unfed} before they travel.', {
              unfed: days(parameters.unfedDays),
            }),
            phrase('Count them twice as they are packed: a third water, two thirds air or oxygen, dark and warm.'),
            phrase('Write down how many went and to whom. None today? Write 0.'),
            phrase('Whoever takes them gets their age, what they eat, and the salinity and warmth of their water.'),
          ],
          cautions: releaseCautions,
          fields: [
            numberField({
              name: 'placed',
              label: 'Placed',
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              likely: [0, number ?? 500],
            }),
            noteField('To whom'),
          ],
          because: [
            size.measured
              ? factLink(size.measured, { label: 'last measured' })
              : computedLink('length by age', growth.lengths.source.citation, {
                  label: 'never measured; by age',
                  quantity: lengthMm,
                }),
            computedLink('length by age', growth.lengths.source.citation, {
              label: 'now about',
              quantity: lengthMm,
              joins: 'and',
            }),
            ...(number === null
              ? []
              : [
                  computedLink('counts, moves and losses', null, {
                    label: 'by the book',
                    quantity: animals(number),
                    joins: 'and' as const,
                  }),
                ]),
            parameter('fromMm', 'and'),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const placed = Math.round(numberOf(values, 'placed') ?? 0)
    const note = given({ note: textOf(values, 'note') })
    return {
      facts: [
        { kind: 'care', subjectId, data: { act: 'looked_to_place', ...(placed > 0 ? {} : note) } },
        ...(placed > 0
          ? [{ kind: 'outcome', subjectId, data: { outcome: 'placed', number: placed, ...note } } as const]
          : []),
      ],
    }
  },
})
