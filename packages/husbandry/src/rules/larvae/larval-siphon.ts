import { z } from 'zod'
import { defineRule, settingLink } from '../../engine/rule.ts'
import { phrase, taskContent } from '../phrases.ts'
import { larvalLookDue } from '../plans/larval-look-plan.ts'
import { isSiphonDue, larvalSiphonId, larvalSiphonParameters } from '../plans/siphon-plan.ts'
import { firstRound } from '../rounds.ts'
import { siphonFacts, siphonFields, siphonSteps } from './bottom-siphon.ts'
import { lookLinks } from './look-parts.ts'
import { batchById } from './prey-count.ts'

const ContextSchema = z.object({
  /** Tasks that were kept before a siphoning took the look along did not say. */
  look: z.object({ withLight: z.boolean() }).nullable().default(null),
})

export const larvalSiphon = defineRule({
  id: larvalSiphonId,
  title: 'Siphon the bottom',
  sentence:
    'From day {fromDay} siphon the bottom of every larval tank daily, and count the dead; on days with a water change it is part of that.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: larvalSiphonParameters,
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    if (!isSiphonDue(snapshot, batch, day)) return []
    const look = larvalLookDue(snapshot, batch, day)
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'siphon',
          title: phrase(`Siphon the bottom, count the dead${look ? ', look at the larvae' : ''}`),
          steps: siphonSteps(look),
          fields: siphonFields(look),
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            parameter('fromDay', 'and'),
            ...(look ? lookLinks(look) : []),
          ],
        }),
        context: { look: look && { withLight: look.withLight } },
      },
    ]
  },
  record: ({ context, values, subjectId }) => ({
    facts: siphonFacts(subjectId, { values, look: ContextSchema.parse(context).look }),
  }),
})
