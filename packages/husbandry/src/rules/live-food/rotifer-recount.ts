import { type CultureFall, EGG_RATIO_BANDS, FEMALES_NEEDED } from '@fryward/live-feed'
import type { Because, Phrase } from '@fryward/shared'
import { firstRound, roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import { rotiferRecountDefinition } from '../../definitions/live-food/rotifer-recount.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { type CultureCount, cultureRecord } from '../../state/culture-history.ts'
import { fallOf } from '../../state/culture-trend.ts'
import { countField } from '../../task/fields.ts'
import { animals, perMl, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { signsField } from '../parts/culture-signs.ts'
import { densestPerMl, eggSteps, sampleFacts, sampleMl } from '../parts/rotifer-sample.ts'

const replicates = 3
// Either the fall is true or the count before it: whatever lies between the two is likely. common practice
const likelyFactor = 2

export const rotiferRecount = defineRule(rotiferRecountDefinition, {
  draft: ({ snapshot, day, subject }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const record = cultureRecord(snapshot, culture, { until: day.endsAt })
    const last = record.counts.at(-1)
    if (!last) return []
    const fall = fallOf(record, culture)
    const isFall = fall !== null && !fall.isAgreed
    if (!isFall && !hasTooFewFemales(last)) return []
    const isToday = last.fact.at >= day.startsAt
    const round = (isToday ? roundOfInstant(roundsInOrder(day), last.fact.at) : undefined) ?? firstRound(day)
    return [
      {
        roundId: round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'count',
          title: isFall
            ? titled('count', {
                thing: 'rotifers again',
                details: [{ kind: 'because', words: [`${Math.round(fall.lostShare * 100)}% are gone`] }],
              })
            : titled('count', { thing: `eggs again, on ${FEMALES_NEEDED} adult females` }),
          steps: isFall ? fallSteps() : eggSteps(),
          fields: [
            countField({
              name: 'count',
              label: 'Rotifers',
              isRequired: true,
              unit: 'per_mL',
              maximum: densestPerMl,
              likely: likelyBetween(last, fall),
              usual: null,
              replicates,
              withEggs: true,
            }),
            signsField,
          ],
          because: isFall ? fallLinks(last, fall) : eggLinks(last),
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: sampleFacts(subjectId, values) }),
})

/** Few eggs, but on so few females that chance alone may say so. */
function hasTooFewFemales({ eggRatio, females }: CultureCount): boolean {
  return eggRatio !== null && females !== null && eggRatio < EGG_RATIO_BANDS.declining && females < FEMALES_NEEDED
}

function likelyBetween(last: CultureCount, fall: CultureFall | null): [number, number] {
  const [low, high] = [last.densityPerMl, fall?.expectedPerMl ?? last.densityPerMl]
  return [Math.max(1, low / likelyFactor), Math.max(20, high * likelyFactor)]
}

const fallSteps = (): Phrase[] => [
  phrase('Look before you count: do they swim well, does it smell or foam, do they sink or clump, is the air on?'),
  phrase('Stir well and take {replicates} of {volume} again, from other places; look twice at the dilution.', {
    replicates: { value: replicates, unit: 'samples' },
    volume: { value: sampleMl, unit: 'mL' },
  }),
  phrase('Take nothing out of it before that, and touch no other culture with its tools.'),
  phrase('When both counts agree it is in trouble: what to do then stands on the list at once.'),
]

function fallLinks(last: CultureCount, fall: CultureFall): Because[] {
  return [
    factLink(last.fact, { label: 'counted', quantity: perMl(last.densityPerMl) }),
    computedLink('the count before, less what was taken', null, {
      label: 'should be left without growing',
      quantity: perMl(Number(fall.expectedPerMl.toPrecision(3))),
      joins: 'and',
    }),
    computedLink('a fall', 'more than 40 % beyond what was taken: common practice', {
      label: 'gone',
      quantity: share(Number(fall.lostShare.toFixed(2))),
    }),
  ]
}

function eggLinks({ fact, eggRatio, females }: CultureCount): Because[] {
  return [
    factLink(fact, {
      label: `${(eggRatio ?? 0).toFixed(2)} eggs a female, on`,
      quantity: animals(females ?? 0),
    }),
    computedLink(
      'females to look at',
      'ten show no egg one time in four even in a culture that holds; fifty one time in 600 (Poisson at 0.13)',
      { label: 'wanted', quantity: animals(FEMALES_NEEDED), joins: 'and' },
    ),
  ]
}
