import { SALINITY_SHOCK } from '@fryward/live-feed'
import type { Because, HarvestData, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { daysBetween, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { type Creation, computedLink, defineRule, type FactDraft, Gap, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { cultureById, cultureStartDate } from '../../state/culture-state.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { batchesFedBy } from '../../state/feed-links.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { releaseCautions } from '../cautions.ts'
import { litres, measurableLDown, psu, share } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { type HarvestPlan, harvestParameters, harvestPlan, rotiferHarvestId } from '../plans/harvest-plan.ts'
import { rotiferNeedL } from '../plans/top-up-plan.ts'
import { firstRound } from '../rounds.ts'
import { partsOf } from '../values.ts'

type Part = HarvestData['parts'][number] & { name: string }
const ContextSchema = z.object({
  parts: z.array(
    z.object({
      to: z.enum(['larval_batch', 'culture', 'other_fish', 'chilled_reserve', 'drain']),
      subjectId: z.string().optional(),
      volumeL: z.number(),
    }),
  ),
  /** Alive per litre after sieving, to say how many animals a new culture got. */
  animalsPerL: z.number(),
})

// About 50 um keeps the eggs: ICAR e-course (stock culture of rotifers), text of FAO Fish. Tech. Pap. 361.
const sieveUm = 50
// About a tenth is lost per sieving: Attramadal & Sandvand, rotifer cultivating method.
const sievingLoss = 0.1

const boundWords: Record<HarvestPlan['advice']['boundedBy'], string> = {
  age: 'too young',
  density: 'too thin',
  trend: 'falling',
  sustainable: 'held to what the forecast’s lower side can grow back',
  floor: 'held above the floor',
  usual: 'the usual share',
  maximum: 'the most that may be taken',
}

export const rotiferHarvest = defineRule({
  id: rotiferHarvestId,
  title: 'Thin the rotifers',
  sentence:
    'From {firstHarvestAgeDays} days and {firstHarvestPerMl} on, and while rising, take {dailyShare} of a culture a day, as far as it grows back, never more than {mostShare} and not under {floorPerMl}; counted within {countedWithinDays}. The rest goes to {restGoesTo}. A backup is left alone.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: harvestParameters,
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const plan = harvestPlan(snapshot, culture, day)
    if ('why' in plan) {
      const ageDays = daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date)
      if (plan.why === 'count-first' && ageDays >= parameters.firstHarvestAgeDays)
        throw new Gap(`Count ${culture.name}: its last count is too old to harvest by.`)
      return []
    }
    if (plan.litres <= 0) return []
    const parts = suggestParts({ snapshot, culture, day, plan, rest: parameters.restGoesTo })
    const because: Because[] = [
      ...plan.density.because,
      parameter('dailyShare', 'and'),
      settingLink(culture.id, 'volume', {
        label: 'in it',
        quantity: litres(culture.volumeL),
        joins: 'and',
      }),
      computedLink('harvest advice', 'common practice; bounded by the lower decile of the forecast', {
        label: `for today: ${boundWords[plan.advice.boundedBy]}`,
        quantity: share(Number(plan.advice.shareOfVolume.toFixed(3))),
        joins: 'times',
      }),
      ...(plan.takenToday.length > 0
        ? [
            computedLink('harvests of today', null, {
              label: 'taken already today',
              quantity: litres(plan.takenToday.reduce((sum, fact) => sum + fact.data.volumeL, 0)),
              joins: 'minus',
            }),
          ]
        : []),
      computedLink('rounded down to a jug’s mark', null, { label: 'to take', quantity: litres(plan.litres) }),
    ]
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'harvest',
          title: phrase(`{amount} out: ${destinationWords(parts)}`, { amount: litres(plan.litres) }),
          amount: litres(plan.litres),
          amountOf: 'culture',
          steps: [
            phrase('Count first, then take it, then feed. Stop the air for a few minutes so that dirt settles.'),
            phrase(`Run {amount} through a sieve of {mesh}, kept under water.`, {
              amount: litres(plan.litres),
              mesh: { value: sieveUm, unit: 'um' },
            }),
            phrase('Rinse with clean water of the same salinity, and resuspend: culture water never goes into larvae.'),
            ...salinitySteps(snapshot, culture, parts),
            ...parts.map((part) => phrase(`{litres} of it ${whither(part)}.`, { litres: litres(part.volumeL) })),
            phrase(`Rinse the sieve; it stays with ${culture.name}.`),
          ],
          cautions: parts.some(({ to }) => to === 'drain') ? releaseCautions : [],
          fields: [partsField(culture, parts)],
          because,
        }),
        context: {
          parts: parts.map(({ name: _name, ...part }) => part),
          animalsPerL: plan.density.densityPerMl * 1000 * (1 - sievingLoss),
        },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const planned = ContextSchema.parse(context)
    const parts = partsOf(values, 'parts') ?? planned.parts
    return { facts: harvestFacts({ subjectId, parts, animalsPerL: planned.animalsPerL }), creations: [] as Creation[] }
  },
})

/** A harvest, and for each part that starts or thickens another culture the animals that went in. */
export function harvestFacts(input: {
  subjectId: string
  parts: HarvestData['parts']
  animalsPerL: number
}): FactDraft[] {
  const { subjectId, parts, animalsPerL } = input
  const volumeL = Number(parts.reduce((sum, part) => sum + part.volumeL, 0).toFixed(6))
  if (volumeL <= 0) return []
  return [
    { kind: 'harvest', subjectId, data: { volumeL, parts } },
    ...parts.flatMap((part): FactDraft[] =>
      part.to === 'culture' && part.subjectId !== undefined
        ? [
            {
              kind: 'inoculation',
              subjectId: part.subjectId,
              data: { animals: Math.round(part.volumeL * animalsPerL), fromCultureId: subjectId },
            },
          ]
        : [],
    ),
  ]
}

function partsField(culture: SnapshotCulture, suggested: Part[]): TaskField {
  const plannedL = suggested.reduce((sum, part) => sum + part.volumeL, 0)
  return {
    type: 'parts',
    name: 'parts',
    label: 'Where it went',
    isRequired: false,
    help: 'Leave empty when it all went as suggested.',
    maximumL: culture.volumeL,
    likelyMaximumL: Math.max(plannedL * 1.5, 0.1),
    suggested,
  }
}

/** Batches first by what they need today, then children not yet started, and the rest as the room says. */
function suggestParts(input: {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  day: HusbandryDay
  plan: HarvestPlan
  rest: 'drain' | 'other_fish' | 'chilled_reserve'
}): Part[] {
  const { snapshot, culture, day, plan, rest } = input
  const parts: Part[] = []
  let leftL = plan.litres
  const give = (part: Omit<Part, 'volumeL'>, wantedL: number) => {
    const volumeL = Math.min(leftL, measurableLDown(wantedL))
    if (volumeL <= 0) return
    parts.push({ ...part, volumeL: round6(volumeL) })
    leftL = round6(leftL - volumeL)
  }
  const reserved = plan.takenToday.flatMap((fact) => fact.data.parts)
  for (const batch of batchesFedBy(snapshot, culture, day.date)) {
    const hasL = reserved.filter((part) => part.subjectId === batch.id).reduce((sum, part) => sum + part.volumeL, 0)
    // To the next mark of the jug: a little over is safer than a little under.
    give(
      { to: 'larval_batch', subjectId: batch.id, name: batch.name },
      rotiferNeedL(snapshot, batch, day) - hasL + 0.009,
    )
  }
  const children = snapshot.cultures.filter(
    (each) =>
      each.parentCultureId === culture.id &&
      each.kind === culture.kind &&
      factsUntil(snapshot, 'inoculation', { subjectId: each.id, until: day.endsAt }).length === 0 &&
      factsUntil(snapshot, 'count', { subjectId: each.id, until: day.endsAt }).length === 0,
  )
  for (const child of children) give({ to: 'culture', subjectId: child.id, name: child.name }, leftL / children.length)
  // The rest is whatever is left, so that the parts add up to the harvest.
  if (leftL > 0) parts.push({ to: rest, name: restNames[rest], volumeL: leftL })
  return parts
}

const restNames = { drain: 'the drain', other_fish: 'other fish', chilled_reserve: 'the chilled reserve' } as const
const round6 = (value: number) => Number(value.toFixed(6))

function whither(part: Part): string {
  if (part.to === 'chilled_reserve') return 'chilled at 4 C, dated'
  if (part.to === 'drain') return 'to the drain'
  return part.to === 'other_fish' ? 'to other fish' : `to ${part.name}`
}
const destinationWords = (parts: Part[]): string => parts.map(({ name }) => name).join(', ')

function salinitySteps(snapshot: RoomSnapshot, culture: SnapshotCulture, parts: Part[]) {
  return parts.flatMap((part) => {
    const batch = snapshot.batches.find(({ id }) => id === part.subjectId)
    const other = batch ? tankOf(snapshot, batch) : snapshot.cultures.find(({ id }) => id === part.subjectId)
    if (!other || Math.abs(other.salinity - culture.salinity) <= SALINITY_SHOCK) return []
    return [
      phrase(`${part.name} is at {theirs}, ${culture.name} at {ours}: bring them over in steps, half an hour each.`, {
        theirs: psu(other.salinity),
        ours: psu(culture.salinity),
      }),
    ]
  })
}
