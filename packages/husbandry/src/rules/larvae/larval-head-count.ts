import { middleRound } from '../../calendar/rounds.ts'
import { larvalHeadCountDefinition } from '../../definitions/larvae/larval-head-count.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, profileLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { usualLengthsMm } from '../../species/juvenile-growth.ts'
import { batchNumbers } from '../../state/batch-state.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { deformedField, lengthField, noteField, numberField } from '../../task/fields.ts'
import { animals, litres } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { youngWords } from '../../task/young.ts'
import { headCountFacts } from '../parts/head-count.ts'

// A batch that nobody has numbered: a few hundred. common practice
const likelyUnknown = 1000

export const larvalHeadCount = defineRule(larvalHeadCountDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    const tank = tankOf(snapshot, batch)
    if (!diet || !tank) return []
    // A sample in so many mL is no head count: larvae are too few for it.
    const last = factsUntil(snapshot, 'count', { subjectId: batch.id, until: day.endsAt }).findLast(
      ({ data }) => data.of === 'larvae' && data.volumeMl === undefined,
    )
    const { now } = batchNumbers(snapshot, batch)
    const isFirst = !last && diet.day >= parameters.fromDay && diet.day <= parameters.toDay
    // Whoever moves on is counted then; whoever waits for a place is fed by their number all the while.
    const isWaiting =
      now !== 0 &&
      diet.day >= diet.species.feeding.weaningLastDay.value + parameters.againDays &&
      (daysSince(snapshot, last, day.date) ?? diet.day) >= parameters.againDays
    if (!isFirst && !isWaiting) return []
    const young = youngWords(batch)
    const { larvaePerL } = diet.species
    // Small fish from the first day want more room than larvae, whatever the room says of those.
    const isRoomier = !young.settle && larvaePerL.value.to < parameters.mostPerL
    const most = Math.floor((isRoomier ? larvaePerL.value.to : parameters.mostPerL) * tank.volumeL)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'count',
          title: titled('count', { thing: isWaiting ? 'the young' : `the ${young.name}` }),
          steps: isWaiting
            ? [
                phrase('Count them as they pass from one cup to another under water, or on a photograph from above.'),
                phrase('Five of them to a ruler, nose to tail. Sick or bent ones are written down.'),
              ]
            : [
                // Larvae come to a light; those that were let go as small fish hold on or hide.
                phrase(
                  young.settle
                    ? 'Light at one end; count a tenth of the surface and ten times that, or a photograph from above.'
                    : 'Count them as they pass from one cup to another under water, or on a photograph.',
                ),
                phrase(
                  `More than {most} in ${tank.name}: move those above it to another larval tank, in a jug under water.`,
                  {
                    most: animals(most),
                  },
                ),
                phrase('Write down how many are left in it; what was moved is written down as a move, on their page.'),
              ],
          fields: [
            numberField({
              name: 'number',
              label: isWaiting ? 'Young in it now' : young.inIt,
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              // Fewer than a third of the book, or more than it says, is looked at twice. common practice
              likely: now === null ? [1, likelyUnknown] : [Math.max(1, now / 3), Math.max(1, now)],
              step: now !== null && now < 100 ? 1 : 10,
            }),
            lengthField(usualLengthsMm(diet.species.growth, diet.day)),
            deformedField(young.deformed),
            noteField(),
          ],
          because: [
            settingLink(batch.id, 'hatch night', { label: young.bornOn, text: batch.hatchedOn }),
            ...(isWaiting
              ? [
                  ...(last ? [factLink(last, { label: 'last counted', joins: 'and' as const })] : []),
                  parameter('againDays', 'and'),
                ]
              : [parameter('fromDay', 'and'), parameter('toDay', 'and')]),
            ...(now === null
              ? []
              : [
                  computedLink('hatched, losses and moves', null, {
                    label: 'by the book',
                    quantity: animals(now),
                    joins: 'and' as const,
                  }),
                ]),
            ...(isWaiting
              ? []
              : [
                  settingLink(tank.id, 'volume', {
                    label: `in ${tank.name}`,
                    quantity: litres(tank.volumeL),
                    joins: 'and' as const,
                  }),
                  isRoomier
                    ? profileLink(diet.species.tradeName, larvaePerL.source.citation, {
                        label: 'young at most',
                        quantity: { value: larvaePerL.value.to, unit: 'per_L' },
                        joins: 'times',
                      })
                    : parameter('mostPerL', 'times'),
                ]),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: headCountFacts(subjectId, 'larvae', values) }),
})
