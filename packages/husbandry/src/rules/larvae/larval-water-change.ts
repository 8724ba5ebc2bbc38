import { z } from 'zod'
import { middleRound } from '../../calendar/rounds.ts'
import { larvalWaterChangeDefinition } from '../../definitions/larvae/larval-water-change.ts'
import { wantsSponge } from '../../plans/ammonia-plan.ts'
import { larvalChange } from '../../plans/larval-change-plan.ts'
import { larvalLookDue } from '../../plans/larval-look-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { litres, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { youngWords } from '../../task/young.ts'
import { ammoniaLinks } from '../parts/ammonia-links.ts'
import { missingSponge } from '../parts/water-act.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../parts/water-change.ts'
import { siphonCheck, siphonFacts, siphonFields, siphonSteps } from './bottom-siphon.ts'
import { lookLinks } from './look-parts.ts'

const LookSchema = z.object({
  /** Tasks that were kept before a change took the look along did not say. */
  look: z.object({ withLight: z.boolean() }).nullable().default(null),
})

export const larvalWaterChange = defineRule(larvalWaterChangeDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const plan = larvalChange(snapshot, batch, day)
    if (!plan) return []
    const { tank } = plan
    const look = larvalLookDue(snapshot, batch, day)
    const young = youngWords(batch)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'change_water',
          title: titled('give', {
            amount: litres(plan.litres),
            thing: 'new water',
            details: [also('bottom siphoned'), ...(look ? [also(`${young.name} looked at`)] : [])],
          }),
          ...waterChangeAmount(plan.litres),
          steps: [
            ...matchSteps(tank),
            ...siphonSteps(look, young),
            phrase(`The rest out through a screen that holds the ${young.name}; in by a drip line, over an hour.`),
            phrase(
              young.settle
                ? 'Prey and green water go with it: count and top up afterwards.'
                : 'Prey goes with it: before a feed, not after one.',
            ),
            ...(wantsSponge(snapshot, { tank, batch, day }) ? [missingSponge] : []),
          ],
          looks: look ? [...young.looks] : ['deformed_larvae'],
          fields: [...siphonFields(look, young), ...waterChangeFields(tank, plan.litres)],
          because: [
            settingLink(batch.id, 'hatch night', { label: young.bornOn, text: batch.hatchedOn }),
            parameter('firstShare', 'and'),
            parameter('moreEachDay', 'and'),
            ...(plan.ammonia ? ammoniaLinks(plan.ammonia) : []),
            computedLink(plan.ammonia ? 'dilution by a change' : 'day of life', null, {
              label: 'today',
              quantity: share(Number(plan.share.toFixed(3))),
              joins: 'equals',
            }),
            settingLink(tank.id, 'volume', {
              label: `in ${tank.name}`,
              quantity: litres(tank.volumeL),
              joins: 'times',
            }),
            ...(look ? lookLinks(look) : []),
          ],
        }),
        context: { ...waterChangeContext(tank, plan.litres), look: look && { withLight: look.withLight } },
      },
    ]
  },
  check: siphonCheck,
  record: ({ context, values, subjectId }) => ({
    facts: [
      ...waterChangeFacts(context, values),
      ...siphonFacts(subjectId, { values, look: LookSchema.parse(context).look }),
    ],
  }),
})
