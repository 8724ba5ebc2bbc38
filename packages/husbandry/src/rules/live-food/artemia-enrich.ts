import { elapsedDays } from '../../calendar/husbandry-day.ts'
import { fromMemory, published } from '../../engine/parameters.ts'
import { defineRule, factLink, settingLink } from '../../engine/rule.ts'
import { lastCare } from '../../state/care.ts'
import { cultureById } from '../../state/culture-state.ts'
import { grams, hours, litres, measurableG } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { roundsInOrder } from '../rounds.ts'
import { lastHatch } from './artemia-discard.ts'

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
          title: phrase('{amount} emulsion to the nauplii', { amount: grams(emulsionG) }),
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
              label: 'in it',
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
