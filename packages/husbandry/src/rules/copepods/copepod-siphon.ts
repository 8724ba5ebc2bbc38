import { z } from 'zod'
import { middleRound } from '../../calendar/rounds.ts'
import { copepodSiphonDefinition } from '../../definitions/copepods/copepod-siphon.ts'
import { copepodChange } from '../../plans/copepod-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { degC, litres, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { waterChangeAmount, waterChangeFact, waterChangeFields } from '../parts/water-change.ts'

const ContextSchema = z.object({ plannedL: z.number() })

export const copepodSiphon = defineRule(copepodSiphonDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const plan = copepodChange(snapshot, culture, day)
    if (!plan) return []
    const last = lastCare(snapshot, 'siphon_bottom', { subjectId: culture.id, day })
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'siphon',
          title: titled('give', {
            amount: litres(plan.litres),
            thing: 'new water',
            details: [also('bottom siphoned')],
          }),
          ...waterChangeAmount(plan.litres),
          steps: [
            // Eggs of free spawners lie on the bottom: Støttrup, review of rearing copepods for larviculture (abstract).
            phrase('Air off; a thin hose, slowly over the bottom, onto the fine sieve: eggs lie there with the dirt.'),
            phrase('Rinse what the sieve holds into a cup, let the dirt settle, put back what swims and the eggs.'),
            phrase('New water in slowly, measured: {salinity}, {temperature}, within 1 of both.', {
              salinity: psu(culture.salinity),
              temperature: degC(culture.temperatureC),
            }),
          ],
          cautions: releaseCautions,
          fields: waterChangeFields(culture, plan.litres),
          because: [
            last
              ? factLink(last, { label: 'last siphoned' })
              : settingLink(culture.id, 'history', { label: 'not yet siphoned' }),
            parameter('everyDays', 'and'),
            settingLink(culture.id, 'volume', { label: 'in it', quantity: litres(culture.volumeL), joins: 'and' }),
            parameter('share', 'times'),
            computedLink('rounded down to a jug’s mark', null, { label: 'to change', quantity: litres(plan.litres) }),
          ],
        }),
        context: { plannedL: plan.litres },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL } = ContextSchema.parse(context)
    return {
      facts: [
        { kind: 'care', subjectId, data: { act: 'siphon_bottom' } },
        waterChangeFact(subjectId, { plannedL, values }),
      ],
    }
  },
})
