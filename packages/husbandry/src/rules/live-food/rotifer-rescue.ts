import { INOCULUM_RANGE_PER_ML } from '@fryward/live-feed'
import type { Because, Phrase, TaskField } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferRescueDefinition } from '../../definitions/live-food/rotifer-rescue.ts'
import type { FactDraft, FactOf } from '../../facts/fact.ts'
import { type Rescue, rescueFor } from '../../plans/rescue-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { type CultureCount, type CultureRecord, cultureRecord } from '../../state/culture-history.ts'
import { disinfectionCautions, releaseCautions } from '../../task/cautions.ts'
import { givenAmountField } from '../../task/fields.ts'
import { litres, perMl, share as shareOf } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'
import { healthFrom } from '../parts/culture-signs.ts'
import { signsSince } from '../parts/culture-trouble.ts'

const ContextSchema = z.object({
  plannedL: z.number(),
  volumeL: z.number(),
  sourceId: z.string().nullable(),
  animalsPerL: z.number(),
})
export const rotiferRescue = defineRule(rotiferRescueDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const sick = sickSince(snapshot, culture, day)
    const share = sick.length > 0 ? Math.max(parameters.crashShare, parameters.sickShare) : parameters.crashShare
    const crash = crashOf(cultureRecord(snapshot, culture, { until: day.endsAt }), share)
    if (!crash) return []
    const rescue = rescueFor(snapshot, culture, { day, startPerMl: parameters.startPerMl })
    const isLost = crash.last.densityPerMl < parameters.crashShare * crash.densest.densityPerMl
    // What still lives is not thrown away while nothing is there to take its place.
    if (!isLost && !rescue) return []
    const name = rescue?.source.culture.name
    const amount = rescue ? litres(rescue.plannedL) : null
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'restart',
          title:
            amount === null
              ? titled('restart_crashed')
              : titled('give_from', { amount, from: name ?? null, details: [also('for a new start')] }),
          amount,
          amountOf: rescue ? `${name}, sieved` : null,
          steps: rescueSteps(culture, rescue),
          cautions: [...releaseCautions.slice(0, 1), ...disinfectionCautions],
          fields: rescue ? [takenField(rescue)] : [],
          because: [
            ...crashLinks(crash),
            ...sick.map((fact) =>
              factLink(fact, { label: 'seen', text: fact.data.signs.join(', ').replaceAll('_', ' '), joins: 'and' }),
            ),
            parameter(isLost ? 'crashShare' : 'sickShare', 'and'),
            parameter('startPerMl', 'and'),
            settingLink(culture.id, 'volume', { label: 'in it', quantity: litres(culture.volumeL), joins: 'times' }),
            ...rescueLinks(rescue),
          ],
        }),
        context: {
          plannedL: rescue?.plannedL ?? 0,
          volumeL: culture.volumeL,
          sourceId: rescue?.source.culture.id ?? null,
          animalsPerL: rescue?.animalsPerL ?? 0,
        },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, volumeL, sourceId, animalsPerL } = ContextSchema.parse(context)
    const care = { kind: 'care', subjectId, data: { act: 'restart_culture', litres: volumeL } } as const
    if (sourceId === null) return { facts: [care] }
    return {
      facts: [
        care,
        ...broughtOver(subjectId, { sourceId, animalsPerL, takenL: numberOf(values, 'amountL') ?? plannedL }),
      ],
    }
  },
})

/** What goes from one culture into another. */
export function broughtOver(
  subjectId: string,
  { sourceId, animalsPerL, takenL }: { sourceId: string; animalsPerL: number; takenL: number },
): FactDraft[] {
  const parts = [{ to: 'culture' as const, subjectId, volumeL: takenL }]
  const data = { animals: Math.round(takenL * animalsPerL), fromCultureId: sourceId }
  return [
    { kind: 'harvest', subjectId: sourceId, data: { volumeL: takenL, parts } },
    { kind: 'inoculation', subjectId, data },
  ]
}

// From the morning of the day before. common practice
const sickHours = 24

/** Signs of trouble that were seen the day before and again today, with no look between that found all well. */
function sickSince(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): FactOf<'observation'>[] {
  const bad = signsSince(snapshot, culture, { day, hours: sickHours }).filter(
    (fact) => healthFrom([fact]).grade === 'act',
  )
  const isBoth = bad.some(({ at }) => at < day.startsAt) && bad.some(({ at }) => at >= day.startsAt)
  return isBoth ? bad : []
}

type Crash = { last: CultureCount; densest: CultureCount }

/** The last count and the densest when little is left of it; null when it stands, or was started again since. */
function crashOf({ counts, inoculations }: CultureRecord, crashShare: number): Crash | null {
  const last = counts.at(-1)
  const densest = counts.reduce<CultureCount | undefined>(
    (best, count) => (best && best.densityPerMl >= count.densityPerMl ? best : count),
    undefined,
  )
  if (!last || !densest || last.densityPerMl >= crashShare * densest.densityPerMl) return null
  return inoculations.some(({ fact }) => fact.at > last.fact.at) ? null : { last, densest }
}

function rescueSteps(culture: SnapshotCulture, rescue: Rescue | null): Phrase[] {
  return [
    phrase(
      `See to ${rescue?.source.culture.name ?? 'every other culture'} first, and only then touch ${culture.name}.`,
    ),
    phrase(`Empty ${culture.name} down the drain; disinfect vessel, air stone and tools, rinse, dry.`),
    phrase('Fill it with new water, matched, and put the sieved animals in.'),
    ...(rescue
      ? []
      : [phrase('No other sound culture can give any today: take the chilled reserve, or buy a starter in today.')]),
    ...(rescue?.isThin ? [phrase('That is a thin start: feed it by its count, and leave it alone for a week.')] : []),
  ]
}

export function takenField({ source, plannedL }: Rescue): TaskField {
  return givenAmountField({
    name: 'amountL',
    label: `Of ${source.culture.name}`,
    unit: 'L',
    planned: plannedL,
    maximum: source.culture.volumeL,
    step: 0.1,
  })
}

function crashLinks({ last, densest }: Crash): Because[] {
  return [
    factLink(last.fact, { label: 'counted', quantity: perMl(last.densityPerMl) }),
    factLink(densest.fact, {
      label: 'densest count',
      quantity: perMl(densest.densityPerMl),
      joins: 'divided_by',
    }),
    computedLink('its counts', null, {
      label: 'left',
      quantity: shareOf(Number((last.densityPerMl / densest.densityPerMl).toFixed(3))),
    }),
  ]
}

export function rescueLinks(rescue: Rescue | null): Because[] {
  const source = `${INOCULUM_RANGE_PER_ML.lower}-${INOCULUM_RANGE_PER_ML.upper} per mL: ICAR e-course on rotifers`
  if (!rescue) return [computedLink('animals to start with', source, { label: 'no culture to take it from' })]
  return [
    ...rescue.source.because.map((link, index): Because => (index === 0 ? { ...link, joins: 'divided_by' } : link)),
    computedLink('animals to start with', source, { label: 'to take', quantity: litres(rescue.plannedL) }),
  ]
}
