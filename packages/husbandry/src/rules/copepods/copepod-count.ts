import { firstRound } from '../../calendar/rounds.ts'
import { copepodCountDefinition } from '../../definitions/copepods/copepod-count.ts'
import { isWaitedFor } from '../../plans/copepod-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { daysSince } from '../../state/day-facts.ts'
import { countField } from '../../task/fields.ts'
import { mL, perMl } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { countOf } from '../../task/values.ts'
import { signFacts, signsField } from '../parts/culture-signs.ts'

// Harpacticoids on surfaces have been held by the hundred per mL; nothing kept here is denser. from memory
const densestPerMl = 1000
// From a thin start to a crowded vessel of a small room. common practice
const likelyGrown = [0.05, 20] as const
const likelyNauplii = [0, 50] as const
const likelyFactor = 4

export const copepodCount = defineRule(copepodCountDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'copepod' || culture.startedAt >= day.endsAt) return []
    const { startedAt, counts } = cultureRecord(snapshot, culture, { until: day.endsAt })
    // Moved to a clean vessel today, they are counted once they have settled.
    if (startedAt > culture.startedAt && startedAt >= day.startsAt) return []
    const last = counts.at(-1)
    const since = daysSince(snapshot, last?.fact, day.date)
    const everyDays = isWaitedFor(snapshot, culture, day) ? 1 : parameters.everyDays
    if (since !== null && since < everyDays) return []
    const usual = last && last.densityPerMl > 0 ? last.densityPerMl : null
    const sample = { unit: 'per_mL', volumeMl: parameters.sampleMl, replicates: parameters.replicates } as const
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'count',
          title: titled('count', { thing: 'copepods and nauplii' }),
          steps: [
            phrase(
              'Stir gently, bottom and walls too: many kinds sit there, and an even sample needs them all afloat.',
            ),
            phrase('Take {replicates} of {volume} in a clear cup, a torch from the side, and count by eye or lens.', {
              replicates: { value: parameters.replicates, unit: 'samples' },
              volume: mL(parameters.sampleMl),
            }),
            phrase('Adults and copepodites first; then nauplii, round and jerking, apart.'),
            phrase(
              'Females with eggs? Rotifers or ciliates among them? One rotifer is a rotifer culture in two weeks.',
            ),
          ],
          fields: [
            countField({
              ...sample,
              name: 'count',
              label: 'Adults and copepodites',
              isRequired: true,
              maximum: densestPerMl,
              likely: usual === null ? likelyGrown : [usual / likelyFactor, usual * likelyFactor],
              usual: usual === null ? null : Number(usual.toFixed(1)),
            }),
            countField({ ...sample, name: 'nauplii', label: 'Nauplii', maximum: densestPerMl, likely: likelyNauplii }),
            signsField,
          ],
          because: [
            last
              ? factLink(last.fact, { label: 'last counted', quantity: perMl(last.densityPerMl) })
              : settingLink(culture.id, 'history', { label: 'not yet counted since its start' }),
            parameter('everyDays', 'and'),
            parameter('sampleMl', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const grown = countOf(values, 'count')
    const nauplii = countOf(values, 'nauplii')
    return {
      facts: [
        ...(grown ? [{ kind: 'count', subjectId, data: { of: 'culture', ...grown } } as const] : []),
        ...(nauplii ? [{ kind: 'count', subjectId, data: { of: 'copepod_nauplii', ...nauplii } } as const] : []),
        ...signFacts(subjectId, values),
      ],
    }
  },
})
