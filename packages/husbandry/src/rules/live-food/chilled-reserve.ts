import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { chilledReserveDefinition } from '../../definitions/live-food/chilled-reserve.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { type ChilledJar, chilledL, jarsOf, shareAliveAfter } from '../../state/chilled-jars.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { litres, measurableL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

const ContextSchema = z.object({ litres: z.number() })

// A rest that nobody can pour is no jar. common practice
const emptiedShare = 0.02

/** Litres of the culture that what is left in a jar stands for. */
const litresLeft = ({ harvest, shareLeft }: ChilledJar): number => measurableL(chilledL(harvest) * shareLeft)

export const chilledReserveRule = defineRule(chilledReserveDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const due = jarsOf(snapshot, culture, { day, oldestDays: parameters.oldestDays }).filter(
      ({ ageDays, shareLeft }) => ageDays >= parameters.oldestDays && shareLeft > emptiedShare,
    )
    const [oldest, ...others] = due
    if (!oldest) return []
    const { ageDays } = oldest
    const shareAlive = shareAliveAfter(ageDays)
    const amountL = litresLeft(oldest)
    const othersL = Number(others.reduce((sum, jar) => sum + litresLeft(jar), 0).toFixed(6))
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'discard',
          title: titled('discard_amount', {
            amount: litres(amountL),
            thing: 'chilled rotifers',
            details: [{ kind: 'age', days: ageDays }],
          }),
          amount: litres(amountL),
          amountOf: 'chilled rotifers',
          steps: [
            phrase(
              'A drop under the lens first: when most still swim after an hour of warmth, they may feed fish today.',
            ),
            ...(othersL > 0
              ? [
                  phrase('The later jars that are too old by now go with it: {amount} more.', {
                    amount: litres(othersL),
                  }),
                ]
              : []),
            phrase('Put a fresh part of the next harvest in the cold, with its date on the jar.'),
          ],
          cautions: releaseCautions,
          because: [
            ...due.map(({ harvest }, index) =>
              factLink(harvest, {
                label: 'chilled',
                quantity: litres(chilledL(harvest)),
                joins: index === 0 ? null : 'and',
              }),
            ),
            parameter('oldestDays', 'and'),
            computedLink('survival in the cold', 'Assavaaree et al. 2001, Aquac. Res. 32:29-39', {
              label: 'still alive, about',
              quantity: share(Number(shareAlive.toFixed(2))),
              joins: 'and',
            }),
          ],
        }),
        context: { litres: Number((amountL + othersL).toFixed(6)) },
      },
    ]
  },
  record: ({ context, subjectId }) => {
    const planned = ContextSchema.parse(context)
    return { facts: [{ kind: 'care', subjectId, data: { act: 'discard_reserve', litres: planned.litres } }] }
  },
})
