import { elapsedDays } from '../../calendar/elapsed.ts'
import { firstRound, lastRound } from '../../calendar/rounds.ts'
import { artemiaDecapsulateDefinition } from '../../definitions/live-food/artemia-decapsulate.ts'
import { defineRule } from '../../rule/rule.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { decapsulationCautions } from '../../task/cautions.ts'
import { grams, measurableG, measurableMl, mL } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

export const artemiaDecapsulate = defineRule(artemiaDecapsulateDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    if (!snapshot.cultures.some(({ kind }) => kind === 'artemia_hatch')) return []
    const last = factsUntil(snapshot, 'care', { subjectId: subject.id, until: day.endsAt }).findLast(
      ({ data }) => data.act === 'start_artemia',
    )
    if (last && elapsedDays(last.at, firstRound(day).startsAt) < parameters.everyDays - 0.5) return []
    const { cystsG } = parameters
    return [
      {
        roundId: lastRound(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'start',
          title: titled('decapsulate', { amount: grams(cystsG), thing: 'cysts' }),
          amount: grams(cystsG),
          amountOf: 'cysts',
          steps: [
            phrase('Soak the cysts for half an hour to an hour in the water: {water}.', {
              water: mL(measurableMl(parameters.waterMlPerG * cystsG)),
            }),
            phrase('{soda} of caustic soda into a little of that water, never the other way round.', {
              soda: grams(measurableG(parameters.sodaGPerG * cystsG)),
            }),
            phrase('Stand the bowl in ice; add {bleach} of 5.25 % bleach, and stir without a stop, under 40 C.', {
              bleach: mL(measurableMl(parameters.bleachMlPerG * cystsG)),
            }),
            phrase(
              'When they turn from brown through grey to orange, in minutes, pour them on a sieve and rinse at once.',
            ),
            phrase('Rinse, dip into 0.1 % thiosulphate, and rinse until nothing smells of chlorine.'),
          ],
          cautions: decapsulationCautions,
          because: [
            parameter('cystsG'),
            parameter('bleachMlPerG', 'and'),
            parameter('sodaGPerG', 'and'),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ content, subjectId }) => ({
    facts: [
      {
        kind: 'care',
        subjectId,
        data: { act: 'start_artemia', note: `${content.amount?.value ?? ''} g of cysts decapsulated`.trim() },
      },
    ],
  }),
})
