import type { Sign } from '@fryward/shared'
import { computedLink, defineRule, factLink } from '../../engine/rule.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { cultureById } from '../../state/culture-state.ts'
import { isFallingByCounts } from '../../state/culture-trend.ts'
import { signHoursParameter, signsSince, troubleFacts, troubleFields } from '../culture-trouble.ts'
import { perMl } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'

/** Signs in a copepod culture that want a second look, in words. common practice */
const words: Partial<Record<Sign, string>> = {
  swimming_slow: 'they swim slowly',
  sinking: 'they sink',
  clumping: 'they clump',
  bad_smell: 'it smells',
  foam: 'it foams',
  ciliates: 'ciliates',
}

export const copepodTrouble = defineRule({
  id: 'copepod-trouble',
  title: 'See to copepods in trouble',
  sentence:
    'When signs of the last {signHours} or two falling counts say that a copepod culture is in trouble, look again and act before its next feed.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: { signHours: signHoursParameter },
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
          title: phrase(`See to it: ${[...found].join(', ')}`),
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
