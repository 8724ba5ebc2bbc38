import { z } from 'zod'
import { afterMorning } from '../../calendar/rounds.ts'
import { larvalSiphonDefinition } from '../../definitions/larvae/larval-siphon.ts'
import { larvalLookDue } from '../../plans/larval-look-plan.ts'
import { isSiphonDue } from '../../plans/siphon-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { youngWords } from '../../task/young.ts'
import { siphonCheck, siphonFacts, siphonFields, siphonSteps } from './bottom-siphon.ts'
import { lookLinks } from './look-parts.ts'

const ContextSchema = z.object({
  /** Tasks that were kept before a siphoning took the look along did not say. */
  look: z.object({ withLight: z.boolean() }).nullable().default(null),
})

export const larvalSiphon = defineRule(larvalSiphonDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    if (!isSiphonDue(snapshot, batch, day)) return []
    const look = larvalLookDue(snapshot, batch, day)
    const young = youngWords(batch)
    return [
      {
        roundId: afterMorning(day).id,
        content: taskContent({
          verb: 'siphon',
          title: titled('siphon', {
            thing: 'the bottom',
            details: [also('count the dead'), ...(look ? [also(`look at the ${young.name}`)] : [])],
          }),
          steps: siphonSteps(look, young),
          looks: look ? [...young.looks] : ['deformed_larvae'],
          fields: siphonFields(look, young),
          because: [
            settingLink(batch.id, 'hatch night', { label: young.bornOn, text: batch.hatchedOn }),
            parameter('fromDay', 'and'),
            ...(look ? lookLinks(look) : []),
          ],
        }),
        context: { look: look && { withLight: look.withLight } },
      },
    ]
  },
  check: siphonCheck,
  record: ({ context, values, subjectId }) => ({
    facts: siphonFacts(subjectId, { values, look: ContextSchema.parse(context).look }),
  }),
})
