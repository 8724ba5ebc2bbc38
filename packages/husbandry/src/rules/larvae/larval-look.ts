import { z } from 'zod'
import { middleRound } from '../../calendar/rounds.ts'
import { larvalLookDefinition } from '../../definitions/larvae/larval-look.ts'
import { larvalChange } from '../../plans/larval-change-plan.ts'
import { larvalLookDue } from '../../plans/larval-look-plan.ts'
import { isSiphonDue } from '../../plans/siphon-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { youngWords } from '../../task/young.ts'
import { deformedFields, lookFacts, lookFields, lookLinks, lookSteps } from './look-parts.ts'

const ContextSchema = z.object({ withLight: z.boolean().default(false) })

export const larvalLook = defineRule(larvalLookDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const look = larvalLookDue(snapshot, batch, day)
    // Whoever siphons has them under the eyes for minutes: the siphoning asks how they are.
    if (!look || larvalChange(snapshot, batch, day) || isSiphonDue(snapshot, batch, day)) return []
    const young = youngWords(batch)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'look',
          title: titled('look_at', {
            thing: `the ${young.name}`,
            details: [{ kind: 'day', day: look.diet.day }, ...(look.withLight ? [also('and the light')] : [])],
          }),
          steps: lookSteps(look, young),
          looks: [...young.looks],
          fields: [...lookFields(young), ...deformedFields(young)],
          because: [
            settingLink(batch.id, 'hatch night', { label: young.bornOn, text: batch.hatchedOn }),
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
