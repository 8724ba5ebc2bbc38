import type { Because, Phrase, TaskField } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferCountDefinition } from '../../definitions/live-food/rotifer-count.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { type CultureRecord, cultureRecord, standsEmpty } from '../../state/culture-history.ts'
import { cultureStartDate, densityAt } from '../../state/culture-state.ts'
import { dateOf, daysSince } from '../../state/day-facts.ts'
import { batchesFedBy } from '../../state/feed-links.ts'
import { countField } from '../../task/fields.ts'
import { animals, days, mL, perMl, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { signsField } from '../parts/culture-signs.ts'
import { densestPerMl, eggSteps, sampleFacts, sampleMl } from '../parts/rotifer-sample.ts'

// A precise count needs about 100 animals (CV = 100/sqrt(n) %; standard theory, from memory), and three times as many
// are still counted without losing one's place. common practice
const mostCountedAtOnce = 300
// What a culture may do between two counts without asking whether the number is right. common practice
const likelyFactor = 3
// A culture that has never been counted: thin inoculum to dense small culture. common practice
const likelyUnknown = [20, 1500] as const

export const rotiferCount = defineRule(rotiferCountDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const record = cultureRecord(snapshot, culture, { until: day.endsAt })
    const startedOn = cultureStartDate(snapshot, culture, day.endsAt)
    const ageDays = daysBetween(startedOn, day.date)
    const last = record.counts.at(-1)
    // Started at a known density today: the first count is tomorrow's.
    if (ageDays < 0 || (!last && ageDays === 0 && record.inoculations.length > 0)) return []
    // Somebody has looked, and nothing swims in it.
    if (last && standsEmpty(snapshot, culture, day.endsAt)) return []
    const daily = dailyReason({ snapshot, culture, record, day, isYoung: ageDays < parameters.dailyUntilAgeDays })
    const usually = culture.isBackup ? 'backupEveryDays' : 'everyDays'
    const sinceCount = daysSince(snapshot, last?.fact, day.date)
    if (sinceCount !== null && sinceCount < (daily ? 1 : parameters[usually])) return []
    const round = firstRound(day)
    const expected = densityAt(snapshot, culture, { at: round.startsAt, until: day.endsAt })?.densityPerMl ?? null
    return [
      {
        roundId: round.id,
        content: taskContent({
          verb: 'count',
          title: titled('count', { thing: 'rotifers and eggs' }),
          steps: countSteps({ replicates: parameters.replicates, expectedPerMl: expected }),
          fields: [countedField(expected, parameters.replicates), signsField],
          because: [
            last
              ? factLink(last.fact, { label: 'last counted', quantity: perMl(last.densityPerMl) })
              : settingLink(culture.id, 'start', { label: 'started, not counted yet', text: startedOn }),
            daily === 'young' ? parameter('dailyUntilAgeDays', 'and') : (daily ?? parameter(usually, 'and')),
            computedLink('days of the room’s calendar', null, {
              label: last ? `since the count of ${dateOf(snapshot, last.fact.at)}` : 'of age',
              quantity: days(sinceCount ?? ageDays),
              joins: 'and',
            }),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: sampleFacts(subjectId, values) }),
})

/** Why a culture is counted daily: it is young, was harvested, or feeds larvae; null when it is not, as a backup. */
function dailyReason(input: {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  record: CultureRecord
  day: HusbandryDay
  isYoung: boolean
}): 'young' | Because | null {
  const { snapshot, culture, record, day, isYoung } = input
  if (culture.isBackup) return null
  if (isYoung) return 'young'
  const harvest = record.removals.findLast(({ fact }) => fact.kind === 'harvest')
  const sinceHarvest = daysSince(snapshot, harvest?.fact, day.date)
  if (harvest && sinceHarvest !== null && sinceHarvest <= 1)
    return factLink(harvest.fact, {
      label: 'harvested',
      quantity: { value: harvest.volumeL, unit: 'L' },
      joins: 'and',
    })
  const feeds = batchesFedBy(snapshot, culture, day.date)
  if (feeds.length === 0) return null
  const text = feeds.map(({ name }) => name).join(', ')
  return settingLink(culture.id, 'feed links', { label: 'feeds', text, joins: 'and' })
}

/** Half of what one counts at once, so that a denser culture than expected still is counted once. */
const dilutionFor = (sample: number): number => Math.ceil((2 * sample) / mostCountedAtOnce)

function countSteps({ replicates, expectedPerMl }: { replicates: number; expectedPerMl: number | null }): Phrase[] {
  const sample = expectedPerMl === null ? 0 : expectedPerMl * sampleMl
  return [
    phrase('Stir or turn up the air for a minute, so that they are spread evenly.'),
    phrase('Take {replicates} of {volume} from different places, before feeding.', {
      replicates: { value: replicates, unit: 'samples' },
      volume: mL(sampleMl),
    }),
    phrase('First look at how they swim, alive: slow swimming shows within ten minutes of trouble. Smell the water.'),
    phrase('Only then stop them with a drop of Lugol’s iodine, and count every animal.'),
    ...(sample > mostCountedAtOnce
      ? [
          phrase(
            `Expected are about {expected} in a sample: dilute each 1 in ${dilutionFor(sample)}, and write that down.`,
            {
              expected: animals(roundAnimals(sample)),
            },
          ),
        ]
      : [
          phrase('Dilute only when a sample holds more than some {most}: 1 in 10, and write 10 as the dilution.', {
            most: animals(mostCountedAtOnce),
          }),
        ]),
    ...eggSteps(),
  ]
}

/** The count, doubted when it is far from what is expected; null while nothing is. */
function countedField(expectedPerMl: number | null, replicates: number): TaskField {
  return countField({
    name: 'count',
    label: 'Rotifers',
    isRequired: true,
    unit: 'per_mL',
    maximum: densestPerMl,
    likely: expectedPerMl ? [expectedPerMl / likelyFactor, expectedPerMl * likelyFactor] : likelyUnknown,
    usual: expectedPerMl === null ? null : Math.round(expectedPerMl),
    replicates,
    withEggs: true,
  })
}
