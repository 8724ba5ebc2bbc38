import { z } from 'zod'
import { middleRound } from '../../calendar/rounds.ts'
import { copepodRestartDefinition } from '../../definitions/copepods/copepod-restart.ts'
import { restartDue } from '../../plans/restart-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { disinfectionCautions } from '../../task/cautions.ts'
import { days, perMl, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

const ContextSchema = z.object({ volumeL: z.number(), densityPerMl: z.number().nullable() })

export const copepodRestart = defineRule(copepodRestartDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'copepod') return []
    const due = restartDue(snapshot, culture, day)
    if (!due) return []
    const { startedOn, ageDays } = due
    const kept = parameters.keptShare < 1 ? share(parameters.keptShare) : null
    const count = cultureRecord(snapshot, culture, { until: day.endsAt }).counts.at(-1)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'restart',
          title: titled(kept ? 'restart_part' : 'restart_all', { amount: kept }),
          amount: kept,
          amountOf: kept && 'the copepods',
          steps: [
            phrase('Fill a clean, disinfected and rinsed vessel with new water of the same salinity and warmth.'),
            phrase('Sieve them over, adults and nauplii; leave the dirt of the bottom behind.'),
            phrase('Look through a cup of them for rotifers and ciliates before they go in: pick, rinse, sieve again.'),
            phrase('The old vessel stays, or becomes a second culture on its own page, until this one is well.'),
          ],
          cautions: disinfectionCautions,
          because: [
            settingLink(culture.id, 'start', { label: 'started or last restarted', text: startedOn }),
            settingLink(culture.id, 'age', { label: 'of age', quantity: days(ageDays), joins: 'and' }),
            parameter('everyDays', 'and'),
            parameter('keptShare', 'and'),
            ...(count
              ? [
                  factLink(count.fact, {
                    label: 'last counted',
                    quantity: perMl(count.densityPerMl),
                    joins: 'and' as const,
                  }),
                ]
              : []),
          ],
        }),
        context: {
          volumeL: culture.volumeL,
          densityPerMl: count ? Number((count.densityPerMl * parameters.keptShare).toPrecision(3)) : null,
        },
      },
    ]
  },
  record: ({ context, subjectId }) => {
    const { volumeL, densityPerMl } = ContextSchema.parse(context)
    return {
      facts: [
        { kind: 'care', subjectId, data: { act: 'restart_culture', litres: volumeL } },
        ...(densityPerMl === null ? [] : [{ kind: 'inoculation', subjectId, data: { densityPerMl } } as const]),
      ],
    }
  },
})
