import { artemiaHatchHours, COLD_STORE } from '@fryward/live-feed'
import { z } from 'zod'
import { addMinutes } from '../../calendar/elapsed.ts'
import { lastRound, roundsInOrder } from '../../calendar/rounds.ts'
import { artemiaHarvestDefinition } from '../../definitions/live-food/artemia-harvest.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { noteField } from '../../task/fields.ts'
import { degC, hours, mL } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { textOf } from '../../task/values.ts'

const ContextSchema = z.object({ volumeL: z.number() })
// Hatching is known from 15 to 33 C (hatching time by temperature).
const hatchC = { from: 15, to: 33 }
// Screen under 150 um, kept under water: FAO Fish. Tech. Pap. 361, sect. 4.3.1.
const screenUm = 150

export const artemiaHarvest = defineRule(artemiaHarvestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    if (vessel.temperatureC < hatchC.from || vessel.temperatureC > hatchC.to) return []
    const started = lastCare(snapshot, 'start_artemia', { subjectId: vessel.id, day })
    if (!started) return []
    const harvested = factsUntil(snapshot, 'harvest', { subjectId: vessel.id, until: day.endsAt }).at(-1)
    if (harvested && harvested.at > started.at) return []
    const { hours: hatchHours } = artemiaHatchHours({ temperatureC: vessel.temperatureC })
    const readyAt = addMinutes(started.at, hatchHours * 60)
    if (readyAt >= day.endsAt) return []
    // The first walk after they are out; when the day has none left, the last one.
    const round = roundsInOrder(day).find(({ startsAt }) => startsAt >= readyAt) ?? lastRound(day)
    return [
      {
        roundId: round.id,
        lateAfterMinutes: 90,
        content: taskContent({
          verb: 'harvest',
          title: titled('harvest', { thing: 'the nauplii' }),
          steps: [
            phrase('Air off, light at the bottom, five to ten minutes: no longer, they use up the air.'),
            phrase('Draw them off from the bottom; unhatched cysts lie lowest, shells float: leave both.'),
            phrase('Through a screen under {screen}, kept under water; rinse until it runs clear.', {
              screen: { value: screenUm, unit: 'um' },
            }),
            phrase(
              'What is not fed now: under {cold} with gentle air, at most {hours}, never denser than 8 million a litre.',
              {
                cold: degC(COLD_STORE.belowC),
                hours: hours(parameters.coldHours),
              },
            ),
            phrase('Count a drop of {sample}, diluted, so that the feeds can be measured.', { sample: mL(0.1) }),
          ],
          fields: [noteField('Hatched well? About how many?')],
          because: [
            factLink(started, { label: 'cysts started', text: started.data.note ?? null }),
            settingLink(vessel.id, 'temperature', {
              label: 'in it',
              quantity: degC(vessel.temperatureC),
              joins: 'and',
            }),
            computedLink('hatching time by temperature', 'about 24 h at 28 C: general literature (from memory)', {
              label: 'to hatch',
              quantity: hours(Number(hatchHours.toFixed(1))),
              joins: 'and',
            }),
            parameter('coldHours', 'and'),
          ],
        }),
        context: { volumeL: vessel.volumeL },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { volumeL } = ContextSchema.parse(context)
    const note = textOf(values, 'note')
    return {
      facts: [
        { kind: 'harvest', subjectId, data: { volumeL, parts: [{ to: 'chilled_reserve', volumeL }] } },
        ...(note ? [{ kind: 'observation', subjectId, data: { note } } as const] : []),
      ],
    }
  },
})
