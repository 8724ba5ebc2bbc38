import type { Sign } from '@fryward/shared'
import { firstRound } from '../../calendar/rounds.ts'
import { copepodTroubleDefinition } from '../../definitions/copepods/copepod-trouble.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { isFallingByCounts } from '../../state/culture-trend.ts'
import { perMl } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { signsSince, troubleFacts, troubleFields } from '../parts/culture-trouble.ts'

/** Signs in a copepod culture that want a second look, in words. common practice */
const words: Partial<Record<Sign, string>> = {
  swimming_slow: 'they swim slowly',
  sinking: 'they sink',
  clumping: 'they clump',
  bad_smell: 'it smells',
  foam: 'it foams',
  ciliates: 'ciliates',
}

export const copepodTrouble = defineRule(copepodTroubleDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'copepod') return []
    const seen = signsSince(snapshot, culture, { day, hours: parameters.signHours }).filter(({ data }) =>
      data.signs.some((sign) => words[sign] !== undefined),
    )
    const record = cultureRecord(snapshot, culture, { until: day.endsAt })
    const isFalling = isFallingByCounts(record)
    if (seen.length === 0 && !isFalling) return []
    const found = new Set(seen.flatMap(({ data }) => data.signs.flatMap((sign) => words[sign] ?? [])))
    if (isFalling) found.add('the counts fall')
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'look',
          title: titled('see_to', { details: [{ kind: 'because', words: [...found] }] }),
          steps: [
            phrase('A cup of them against the light before feeding: do they dart, do females carry eggs?'),
            phrase('Smell it; air just turning the water over, warmth as set? No food today while it is still green.'),
            phrase('Foul or full of ciliates: sieve all of them into a clean vessel with new, matched water.'),
            phrase('Thin but clean: no harvest, a little food, and a week. Keep half in a second vessel.'),
            phrase(`Touch no other culture with hands or tools that were in ${culture.name}.`),
          ],
          fields: troubleFields(),
          because: [
            ...seen.map((fact) =>
              factLink(fact, { label: 'seen', text: fact.data.signs.join(', ').replaceAll('_', ' '), joins: 'and' }),
            ),
            ...record.counts
              .slice(-3)
              .map(({ fact, densityPerMl }) =>
                factLink(fact, { label: 'counted', quantity: perMl(densityPerMl), joins: 'and' }),
              ),
            computedLink('signs of trouble', 'common practice', { label: [...found].join(', '), joins: 'and' }),
            parameter('signHours', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: troubleFacts(subjectId, values) }),
})
