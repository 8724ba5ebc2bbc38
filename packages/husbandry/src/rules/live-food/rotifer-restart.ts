import { DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import { z } from 'zod'
import { firstRound, middleRound } from '../../calendar/rounds.ts'
import { rotiferRestartDefinition } from '../../definitions/live-food/rotifer-restart.ts'
import { restartDue } from '../../plans/restart-plan.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { densityAt } from '../../state/culture-state.ts'
import { disinfectionCautions } from '../../task/cautions.ts'
import { givenAmountField } from '../../task/fields.ts'
import { days, litres, measurableL } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

const ContextSchema = z.object({ plannedL: z.number(), volumeL: z.number(), densityPerMl: z.number() })

export const rotiferRestart = defineRule(rotiferRestartDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const due = restartDue(snapshot, culture, day)
    if (!due) return []
    const { startedOn, ageDays } = due
    const density = densityAt(snapshot, culture, { at: firstRound(day).startsAt, until: day.endsAt })
    if (!density) throw new Gap(`Count ${culture.name} before it is restarted after ${ageDays} days.`)
    const plannedL = measurableL(culture.volumeL * parameters.keptShare)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'restart',
          title: titled('restart', { amount: litres(plannedL) }),
          amount: litres(plannedL),
          amountOf: 'culture, sieved',
          steps: [
            phrase('Fill a clean, disinfected and rinsed vessel with new water of the same salinity and warmth.'),
            phrase('Sieve {amount} of the culture, rinse well, and put the animals into the new vessel.', {
              amount: litres(plannedL),
            }),
            phrase('Keep the old vessel until tomorrow’s count shows that the new one is well.'),
            phrase('Then empty, brush and disinfect it with its air stone.'),
          ],
          cautions: disinfectionCautions,
          fields: [
            givenAmountField({
              name: 'amountL',
              label: 'Culture carried over',
              unit: 'L',
              planned: plannedL,
              maximum: culture.volumeL,
              step: 0.1,
            }),
          ],
          because: [
            settingLink(culture.id, 'start', { label: 'started or last restarted', text: startedOn }),
            settingLink(culture.id, 'age', { label: 'of age', quantity: days(ageDays), joins: 'and' }),
            parameter('everyDays', 'and'),
            settingLink(culture.id, 'volume', {
              label: 'in it',
              quantity: litres(culture.volumeL),
              joins: 'and',
            }),
            parameter('keptShare', 'times'),
          ],
        }),
        context: { plannedL, volumeL: culture.volumeL, densityPerMl: density.densityPerMl },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, volumeL, densityPerMl } = ContextSchema.parse(context)
    const carriedL = numberOf(values, 'amountL') ?? plannedL
    const animals = Math.round(carriedL * 1000 * densityPerMl * (1 - DEFAULT_SIEVING_LOSS))
    return {
      facts: [
        { kind: 'care', subjectId, data: { act: 'restart_culture', litres: volumeL } },
        { kind: 'inoculation', subjectId, data: { animals } },
      ],
    }
  },
})
