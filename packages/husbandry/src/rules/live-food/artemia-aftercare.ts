import { COLD_STORE } from '@fryward/live-feed'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { elapsedDays } from '../../calendar/husbandry-day.ts'
import { fromMemory, published } from '../../engine/parameters.ts'
import { defineRule, factLink, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot } from '../../snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { cultureById } from '../../state/culture-state.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { decapsulationCautions, releaseCautions } from '../cautions.ts'
import { grams, hours, litres, measurableG, measurableMl, mL } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound, lastRound, roundsInOrder } from '../rounds.ts'

/** The last harvest of a hatch vessel, and when it was taken. */
function lastHatch(snapshot: RoomSnapshot, id: string, day: HusbandryDay) {
  return factsUntil(snapshot, 'harvest', { subjectId: id, until: day.endsAt }).at(-1)
}

export const artemiaDiscard = defineRule({
  id: 'artemia-discard',
  title: 'Discard old nauplii',
  sentence: 'Discard nauplii that have been in the cold for {coldHours}: they starve and are no food.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    coldHours: {
      type: 'number',
      label: 'kept cold for at most',
      unit: 'hours',
      default: COLD_STORE.longestHours,
      minimum: 1,
      maximum: 48,
      source: published('under 10 C, up to 24 h: Ghent Univ. shrimp nutrition course, Artemia cold storage'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const harvest = lastHatch(snapshot, vessel.id, day)
    const discarded = lastCare(snapshot, 'discard', { subjectId: vessel.id, day })
    if (!harvest || (discarded && discarded.at > harvest.at)) return []
    const oldAfterDays = parameters.coldHours / 24
    const round = roundsInOrder(day).find(({ startsAt }) => elapsedDays(harvest.at, startsAt) >= oldAfterDays)
    if (!round) return []
    return [
      {
        roundId: round.id,
        content: taskContent({
          verb: 'discard',
          title: phrase(`Discard what is left of the nauplii of ${vessel.name}`),
          steps: [phrase('Down the drain; scald or bleach the jar, rinse, dry.')],
          cautions: releaseCautions,
          because: [factLink(harvest, { label: 'harvested' }), parameter('coldHours', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'discard' } }] }),
})

export const artemiaEnrich = defineRule({
  id: 'artemia-enrich',
  title: 'Enrich the nauplii',
  sentence:
    'Enrich nauplii {hoursAfterHatch} after their harvest with {emulsionGPerL} of emulsion, for larvae past their first Artemia.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: false,
  parameters: {
    hoursAfterHatch: {
      type: 'number',
      label: 'after the harvest',
      unit: 'hours',
      default: 8,
      minimum: 0,
      maximum: 24,
      source: published('instar II, about 8 h after hatching: Lavens & Sorgeloos 1996, FAO 361, sect. 4.1'),
    },
    emulsionGPerL: {
      type: 'number',
      label: 'emulsion for each litre',
      unit: 'g',
      default: 0.3,
      minimum: 0.05,
      maximum: 1,
      source: fromMemory('0.3 g/L every 12 h: FAO Fish. Tech. Pap. 361, sect. 4.3.4'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const harvest = lastHatch(snapshot, vessel.id, day)
    const enriched = lastCare(snapshot, 'enrich_artemia', { subjectId: vessel.id, day })
    if (!harvest || (enriched && enriched.at > harvest.at)) return []
    const afterDays = parameters.hoursAfterHatch / 24
    const isTooLate = elapsedDays(harvest.at, day.startsAt) > 1
    const round = roundsInOrder(day).find(({ startsAt }) => elapsedDays(harvest.at, startsAt) >= afterDays)
    if (!round || isTooLate) return []
    const emulsionG = Math.max(0.1, measurableG(parameters.emulsionGPerL * vessel.volumeL))
    return [
      {
        roundId: round.id,
        content: taskContent({
          verb: 'enrich',
          title: phrase(`{amount} emulsion into the nauplii of ${vessel.name}`, { amount: grams(emulsionG) }),
          amount: grams(emulsionG),
          amountOf: 'emulsion',
          steps: [
            phrase('Only those that will not be fed within {hours}: the first nauplii do not eat.', {
              hours: hours(parameters.hoursAfterHatch),
            }),
            phrase('{water} of clean water, strong air; blend {amount} with a little water and pour it in.', {
              water: litres(vessel.volumeL),
              amount: grams(emulsionG),
            }),
            phrase('Rinse well before they are fed: what clings to them fouls the larvae’s water.'),
          ],
          because: [
            factLink(harvest, { label: 'harvested' }),
            parameter('hoursAfterHatch', 'and'),
            parameter('emulsionGPerL', 'and'),
            settingLink(vessel.id, 'volume', {
              label: 'litres in it',
              quantity: litres(vessel.volumeL),
              joins: 'times',
            }),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'enrich_artemia' } }] }),
})

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
      label: 'days between',
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
      label: '5.25 % bleach a gram',
      unit: 'mL',
      default: 9.54,
      minimum: 1,
      maximum: 20,
      source: published(recipe),
    },
    sodaGPerG: {
      type: 'number',
      label: 'caustic soda a gram',
      unit: 'g',
      default: 0.15,
      minimum: 0.05,
      maximum: 1,
      source: published(recipe),
    },
    waterMlPerG: {
      type: 'number',
      label: 'water a gram',
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
