import { z } from 'zod'
import { defineRule, settingLink } from '../../engine/rule.ts'
import { phrase, taskContent } from '../phrases.ts'
import { larvalChange } from '../plans/change-plan.ts'
import { larvalLookDue, larvalLookId, larvalLookParameters } from '../plans/larval-look-plan.ts'
import { isSiphonDue } from '../plans/siphon-plan.ts'
import { middleRound } from '../rounds.ts'
import { deformedFields, lookFacts, lookFields, lookLinks, lookSteps } from './look-parts.ts'
import { batchById } from './prey-count.ts'

const ContextSchema = z.object({ withLight: z.boolean().default(false) })

export const larvalLook = defineRule({
  id: larvalLookId,
  title: 'Look at the larvae',
  sentence:
    'Look at every batch every {everyDays} days: bellies, swimming, bars, bent backs; on days with a siphoning or a water change it is part of that.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: larvalLookParameters,
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const look = larvalLookDue(snapshot, batch, day)
    // Whoever siphons has them under the eyes for minutes: the siphoning asks how they are.
    if (!look || larvalChange(snapshot, batch, day) || isSiphonDue(snapshot, batch, day)) return []
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase(`Look at the larvae, day ${look.diet.day}${look.withLight ? ', and the light' : ''}`),
          steps: lookSteps(look),
          fields: [...lookFields(), ...deformedFields()],
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            ...lookLinks(look),
            parameter('everyDays', 'and'),
          ],
        }),
        context: { withLight: look.withLight },
      },
    ]
  },
  record: ({ context, values, subjectId }) => ({
    facts: lookFacts(subjectId, { values, withLight: ContextSchema.parse(context).withLight }),
  }),
})
