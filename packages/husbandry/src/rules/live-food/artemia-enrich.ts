import { elapsedDays } from '../../calendar/elapsed.ts'
import { roundsInOrder } from '../../calendar/rounds.ts'
import { artemiaEnrichDefinition } from '../../definitions/live-food/artemia-enrich.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { grams, hours, litres, measurableG } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { lastHatch } from './artemia-discard.ts'

export const artemiaEnrich = defineRule(artemiaEnrichDefinition, {
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
          title: titled('enrich', { amount: grams(emulsionG), thing: 'emulsion' }),
          amount: grams(emulsionG),
          amountOf: 'emulsion',
          steps: [
            phrase('Only those that will not be fed within {hours}: newly hatched nauplii do not eat.', {
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
