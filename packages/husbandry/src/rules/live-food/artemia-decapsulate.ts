import { elapsedDays } from '../../calendar/husbandry-day.ts'
import { fromMemory, published } from '../../engine/parameters.ts'
import { defineRule } from '../../engine/rule.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { decapsulationCautions } from '../cautions.ts'
import { grams, measurableG, measurableMl, mL } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound, lastRound } from '../rounds.ts'

const recipe =
  'Larviculture & Artemia Newsletter (Ghent Univ.) no. 43, 1997: 500 g = 4.77 L of 5.25 % bleach + 75 g NaOH + 2.2 L water'

export const artemiaDecapsulate = defineRule({
  id: 'artemia-decapsulate',
  title: 'Decapsulate cysts',
  sentence:
    'Every {everyDays} days decapsulate {cystsG} of cysts, with {bleachMlPerG} of bleach, {sodaGPerG} of caustic soda and {waterMlPerG} of water a gram. Only for those who know how.',
  subject: 'room',
  station: 'live_food',
  isOnByDefault: false,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one time to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: published(
        'kept in saturated brine and cold for 1-2 weeks: Larviculture & Artemia Newsletter no. 43, 1997',
      ),
    },
    cystsG: {
      type: 'number',
      label: 'cysts',
      unit: 'g',
      default: 10,
      minimum: 1,
      maximum: 500,
      source: fromMemory('a week of a small room; change it to yours'),
    },
    bleachMlPerG: {
      type: 'number',
      label: 'of 5.25 % bleach to each of cysts',
      unit: 'mL',
      default: 9.54,
      minimum: 1,
      maximum: 20,
      source: published(recipe),
    },
    sodaGPerG: {
      type: 'number',
      label: 'of caustic soda to each of cysts',
      unit: 'g',
      default: 0.15,
      minimum: 0.05,
      maximum: 1,
      source: published(recipe),
    },
    waterMlPerG: {
      type: 'number',
      label: 'of water to each of cysts',
      unit: 'mL',
      default: 4.4,
      minimum: 0,
      maximum: 20,
      source: published(recipe),
    },
  },
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
          title: phrase('Decapsulate {amount} of cysts', { amount: grams(cystsG) }),
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
