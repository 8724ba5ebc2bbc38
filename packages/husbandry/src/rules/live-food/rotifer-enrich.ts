import type { Phrase } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferEnrichDefinition } from '../../definitions/live-food/rotifer-enrich.ts'
import { topUpPlans } from '../../plans/top-up-plan.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { batchesFedBy } from '../../state/feed-links.ts'
import {
  animals,
  grams,
  hours,
  leastWeighedG,
  litres,
  measurableL,
  measurableMl,
  mL,
  roundAnimals,
} from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

// 500 rotifers per mL while enriching: FAO Fish. Tech. Pap. 361, sect. 3.5. from memory
const enrichedPerMl = 500

export const rotiferEnrich = defineRule(rotiferEnrichDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const done = factsOnDay(snapshot, 'care', { subjectId: culture.id, day }).some(
      ({ data }) => data.act === 'enrich_rotifers',
    )
    const eaters = batchesFedBy(snapshot, culture, day.date)
      .map((batch) => ({ name: batch.name, later: laterNeed(snapshot, { culture, batch, day }) }))
      .filter(({ later }) => later > 0)
    const rotifers = eaters.reduce((sum, { later }) => sum + later, 0)
    if (done || rotifers <= 0) return []
    const emulsionG = hundredths((rotifers / 1e6) * parameters.emulsionGPerMillion)
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'enrich',
          title: titled('give', { amount: grams(emulsionG), thing: 'emulsion to the rotifers set aside' }),
          amount: grams(emulsionG),
          amountOf: 'emulsion',
          steps: [
            phrase(
              'Of what was harvested for the later feeds, sieved and rinsed: about {number}, in {water}, strong air.',
              {
                number: animals(roundAnimals(rotifers)),
                water: litres(Math.max(0.1, measurableL(rotifers / enrichedPerMl / 1000))),
              },
            ),
            emulsionStep(emulsionG),
            phrase(
              'After {hours} sieve them and rinse well, and feed them at once: what clings to them fouls the water.',
              {
                hours: hours(parameters.hours),
              },
            ),
            phrase('Stronger is not better: an emulsion of 36 % DHA cost larvae their lives, one of 6 % was enough.'),
          ],
          because: [
            settingLink(culture.id, 'feed links', {
              label: `for the later feeds of ${eaters.map(({ name }) => name).join(', ')}`,
              quantity: animals(roundAnimals(rotifers)),
            }),
            parameter('emulsionGPerMillion', 'times'),
            parameter('hours', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'enrich_rotifers' } }] }),
})

// Enough water to take a hundredth of a gram out of by syringe. common practice
const blendMl = 10

/** What no scale shows is weighed once, blended, and taken by the mL. */
const emulsionStep = (emulsionG: number): Phrase =>
  emulsionG >= leastWeighedG
    ? phrase('Blend {amount} of emulsion with a little water, and pour it in. The bottle’s own dose comes first.', {
        amount: grams(emulsionG),
      })
    : phrase(
        'Too little for a scale: blend {weighed} of emulsion with {blend} of water, and pour in {part} of that. The bottle’s own dose comes first.',
        {
          weighed: grams(leastWeighedG),
          blend: mL(blendMl),
          part: mL(measurableMl((emulsionG / leastWeighedG) * blendMl)),
        },
      )

const hundredths = (value: number): number => Math.max(0.01, Number(value.toFixed(2)))

/** Rotifers that a batch is to get from a culture after the first feed of a day. */
function laterNeed(
  snapshot: RoomSnapshot,
  { culture, batch, day }: { culture: SnapshotCulture; batch: SnapshotBatch; day: HusbandryDay },
): number {
  try {
    return (topUpPlans(snapshot, batch, day) ?? [])
      .filter((plan) => plan.isNeeded && plan.culture.id === culture.id && plan.round.id !== firstRound(day).id)
      .reduce((sum, plan) => sum + plan.animals, 0)
  } catch (error) {
    // The batch's own top-up says what is missing.
    if (error instanceof Gap) return 0
    throw error
  }
}
