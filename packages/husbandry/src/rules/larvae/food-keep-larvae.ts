import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { foodKeepLarvaeDefinition } from '../../definitions/live-food/food-cures.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, planLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { batchNumbers } from '../../state/batch-state.ts'
import { curesOf } from '../../state/cures.ts'
import { larvaeToPartWithCautions } from '../../task/cautions.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { animals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'

const ContextSchema = z.object({ tooMany: z.number() })
// A tenth more or less is the error of a count by eye. common practice
const worthIt = 1.1

export const foodKeepLarvae = defineRule(foodKeepLarvaeDefinition, {
  draft: ({ snapshot, day, subject }) => {
    const batch = batchById(snapshot, subject.id)
    const about = new Set([batch.id, ...batch.clutchIds])
    const cure = curesOf(snapshot, 'keep_larvae', day).findLast(({ change }) => about.has(change.subjectId))
    const { now } = batchNumbers(snapshot, batch)
    // Before the hatch night they are eggs; while nobody has counted them, nobody knows whether there are too many.
    if (!cure || batch.hatchedOn > day.date || now === null || now <= cure.change.larvae * worthIt) return []
    const tooMany = now - cure.change.larvae
    return [
      {
        roundId: firstRound(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'decide',
          title: titled('keep', {
            amount: animals(cure.change.larvae),
            thing: 'larvae',
            details: [{ kind: 'amount', quantity: animals(now), of: 'by the book' }],
          }),
          amount: animals(cure.change.larvae),
          amountOf: 'larvae',
          steps: [
            phrase('The food is enough for so many: the others would starve, and take these with them.'),
            phrase('Ask first whether another breeder has food for them. Move them in their own water, not in a net.'),
          ],
          cautions: larvaeToPartWithCautions,
          fields: [
            numberField({
              ...{ name: 'placed', label: 'Given to somebody else', unit: 'animals' as const },
              ...{ minimum: 0, maximum: now, likely: [0, tooMany] as const, usual: null },
            }),
            numberField({
              ...{ name: 'culled', label: 'Killed humanely', unit: 'animals' as const },
              ...{ minimum: 0, maximum: now, likely: [0, tooMany] as const, usual: null },
            }),
            noteField('To whom, or how'),
          ],
          because: [
            planLink(cure.fact.data.planMadeAt, {
              label: 'fed by the plan',
              quantity: animals(cure.change.larvae),
              joins: null,
            }),
            computedLink('the book', null, { label: 'there are', quantity: animals(now), joins: 'and' }),
          ],
        }),
        context: { tooMany },
      },
    ]
  },
  check: (values) => {
    const isSaid = numberOf(values, 'placed') !== undefined || numberOf(values, 'culled') !== undefined
    return isSaid ? [] : [{ path: 'placed', message: 'how many went, and where; 0 if none did' }]
  },
  record: ({ context, values, subjectId }) => {
    ContextSchema.parse(context)
    const note = textOf(values, 'note')
    return {
      facts: (['placed', 'culled'] as const).flatMap((outcome) => {
        const number = numberOf(values, outcome) ?? 0
        if (number < 1) return []
        return [{ kind: 'outcome' as const, subjectId, data: { outcome, number, ...(note ? { note } : {}) } }]
      }),
    }
  },
})
