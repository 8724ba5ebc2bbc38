import type { HealthReason } from '@fryward/live-feed'
import type { Because, Phrase, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferTroubleDefinition } from '../../definitions/live-food/rotifer-trouble.ts'
import type { FactOf } from '../../facts/fact.ts'
import { waterAgainst } from '../../plans/culture-water-plan.ts'
import { type HarvestPlan, harvestPlan, type NoHarvest } from '../../plans/harvest-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { type CultureRecord, cultureRecord } from '../../state/culture-history.ts'
import { fallOf, isFallingByCounts } from '../../state/culture-trend.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { givenAmountField } from '../../task/fields.ts'
import { measurableL } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, numberOf } from '../../task/values.ts'
import { healthFrom } from '../parts/culture-signs.ts'
import { signsSince, troubleFacts, troubleFields } from '../parts/culture-trouble.ts'
import { waterChangeFact } from '../parts/water-change.ts'

const words: Record<HealthReason['code'], string> = {
  'swimming-slow': 'they swim slowly',
  sinking: 'they sink or clump',
  smell: 'it smells',
  foam: 'it foams',
  ciliates: 'ciliates',
  'clear-water': 'the water clears',
  'egg-ratio-declining': 'hardly any carry eggs',
  'egg-ratio-stationary': 'few carry eggs',
  'egg-ratio-unsure': 'hardly any of a few females carry eggs',
  'egg-ratio-crowded': 'it is crowded and hardly any carry eggs',
  falling: 'the counts fall',
  'ammonia-high': 'ammonia is high',
  'ammonia-rising': 'ammonia rises',
  'oxygen-low': 'oxygen is low',
  'ph-low': 'pH is low',
  'ph-below-best': 'pH is below its best',
}

export const rotiferTrouble = defineRule(rotiferTroubleDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const record = cultureRecord(snapshot, culture, { until: day.endsAt })
    const seen = signsSince(snapshot, culture, { day, hours: parameters.signHours })
    const isFalling = isFallingByCounts(record) || fallOf(record, culture)?.isAgreed === true
    const water = waterAgainst(snapshot, culture, day)
    const thinning = isFalling ? null : thinningOf(harvestPlan(snapshot, culture, day))
    const health = healthFrom(seen, {
      ...water?.read,
      ...eggsOf(record, factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt })),
      isCrowded: thinning !== null,
      ...(isFalling ? { trend: 'falling' as const } : {}),
    })
    if (health.grade !== 'act') return []
    const reasons = health.reasons.filter(({ grade }) => grade === 'act')
    const isFoul = reasons.some(({ code }) => code === 'ammonia-high' || code === 'ph-low')
    const changeL = isFoul ? measurableL(culture.volumeL * changedShare) : null
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'look',
          title: titled('see_to', { details: [{ kind: 'because', words: reasons.map(({ code }) => words[code]) }] }),
          steps: stepsFor(culture, { reasons, thinning }),
          fields: [...troubleFields(), ...(changeL === null ? [] : [changedField(culture, changeL)])],
          because: [
            ...seen.map((fact) =>
              factLink(fact, { label: 'seen', text: fact.data.signs.join(', ').replaceAll('_', ' '), joins: 'and' }),
            ),
            ...countLinks(record),
            ...(water ? [factLink(water.fact, { label: 'water tested', joins: 'and' as const })] : []),
            ...reasons.map((reason) =>
              computedLink('signs of trouble', reason.source, { label: words[reason.code], joins: 'and' }),
            ),
            parameter('signHours', 'and'),
          ],
        }),
        context: { changeL },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { changeL } = ContextSchema.parse(context)
    const isSaid = numberOf(values, 'amountL') !== undefined || choiceOf(values, 'did', ['thinned']) === 'thinned'
    const changed = changeL !== null && isSaid ? [waterChangeFact(subjectId, { plannedL: changeL, values })] : []
    return { facts: [...troubleFacts(subjectId, values), ...changed] }
  },
})

const ContextSchema = z.object({
  /** What is to be changed of water that was found wrong; tasks kept before that was written down did not say. */
  changeL: z.number().nullable().default(null),
})

// Half at once, as the steps say: ammonia halves, and so do the animals that go with it. common practice
const changedShare = 0.5

/** Asked for where water is to be changed: with it the culture is tested again in the next round. */
const changedField = (culture: SnapshotCulture, changeL: number): TaskField =>
  givenAmountField({
    name: 'amountL',
    label: 'Water changed, if any',
    unit: 'L',
    planned: changeL,
    maximum: culture.volumeL,
    step: 0.1,
  })

/** Eggs of the last count, and how many females they were looked for on; nothing once a look since has found it well. */
function eggsOf(
  { counts }: CultureRecord,
  looks: readonly FactOf<'observation'>[],
): { eggRatio?: number; females?: number } {
  const last = counts.at(-1)
  if (
    !last ||
    last.eggRatio === null ||
    looks.some(({ at, data }) => at > last.fact.at && data.signs.includes('swimming_well'))
  )
    return {}
  return { eggRatio: Math.min(20, last.eggRatio), ...(last.females === null ? {} : { females: last.females }) }
}

/** Whether a crowded culture is still to be thinned by the litres of the list or was lately; null for one that was not crowded. */
function thinningOf(plan: HarvestPlan | NoHarvest): 'asked' | 'done' | null {
  if ('why' in plan) return plan.isThinned === true ? 'done' : null
  if (!plan.isCrowded) return null
  if (plan.litres > 0) return 'asked'
  return plan.takenToday.length > 0 ? 'done' : null
}

const thinningSteps = {
  asked: 'Thin it today by the litres that the list says: eggs come back in a thinner culture within two days.',
  done: 'It was thinned since it was crowded: take no more. Eggs come back in a thinner culture within two days.',
}

function countLinks({ counts }: CultureRecord): Because[] {
  return counts.slice(-3).map(({ fact, densityPerMl, eggRatio }) =>
    factLink(fact, {
      label: eggRatio === null ? 'counted' : `counted, ${eggRatio.toFixed(2)} eggs a female`,
      quantity: { value: densityPerMl, unit: 'per_mL' },
      joins: 'and',
    }),
  )
}

function stepsFor(
  culture: SnapshotCulture,
  { reasons, thinning }: { reasons: readonly HealthReason[]; thinning: keyof typeof thinningSteps | null },
): Phrase[] {
  const has = (...codes: HealthReason['code'][]) => reasons.some(({ code }) => codes.includes(code))
  return [
    phrase('Before feeding: a drop under the lens. Slow swimming shows within ten minutes of trouble.'),
    ...(has('swimming-slow', 'sinking', 'smell')
      ? [
          phrase(
            'Check the air first, then temperature and ammonia. Leave out the next feed while they do not clear it.',
          ),
          phrase('Change a quarter to a half of the water, matched; sieve, rinse and move what swims if it smells.'),
        ]
      : []),
    ...(thinning && has('egg-ratio-crowded') ? [phrase(thinningSteps[thinning])] : []),
    ...(has('egg-ratio-declining', 'falling')
      ? [
          phrase(
            'Do not thin it. Look for too little or too much food, old dirt, ciliates; brush and siphon the bottom.',
          ),
        ]
      : []),
    ...(has('ammonia-high', 'ph-low')
      ? [
          phrase(
            'Change half of the water, matched, and say so below: it is tested again in the next round, and fed by halves till it is sound.',
          ),
        ]
      : []),
    ...(has('oxygen-low')
      ? [phrase('More air at once: look for a kinked line, a clogged stone, a pump that stands.')]
      : []),
    phrase(`Touch no other culture with hands or tools that were in ${culture.name}.`),
    phrase('When nothing helps by tomorrow, start it again from the backup.'),
  ]
}
