import { type Because, type HarvestData, HarvestPartSchema, type Phrase } from '@fryward/shared'
import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { copepodHarvestDefinition } from '../../definitions/copepods/copepod-harvest.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { type CopepodHarvest, copepodHarvest as copepodHarvestPlan } from '../../plans/copepod-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { animals, litres, measurableLDown, perMl, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, destinationsOf, titled } from '../../task/titles.ts'
import { partsOf } from '../../task/values.ts'
import { litresOf, type Part, partSteps, partsField, restIn, restNames } from '../live-food/harvest-parts.ts'
import { filledField, fillFacts, fillSteps } from '../live-food/harvest-refill.ts'

const ContextSchema = z.object({
  parts: z.array(HarvestPartSchema),
  /** As counted; null when nobody counted them. */
  naupliiPerMl: z.number().nullable(),
})

// Adults stay above about 100 um, newly hatched nauplii pass it and stay above about 40. from memory
const grownSieveUm = 100
const naupliiSieveUm = 40

export const copepodHarvest = defineRule(copepodHarvestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const plan = copepodHarvestPlan(snapshot, culture, day)
    if (!plan) return []
    const parts = sharedOut(plan, restIn(snapshot, parameters.restGoesTo))
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'harvest',
          title: titled('harvest_from', {
            amount: litres(plan.litres),
            thing: 'Nauplii',
            to: destinationsOf(parts),
            details: [also('new water in')],
          }),
          amount: litres(plan.litres),
          amountOf: 'culture, sieved',
          steps: [...sieveSteps(culture, plan.litres), ...partSteps(snapshot, culture, parts), ...fillSteps(culture)],
          cautions: parts.some(({ to }) => to === 'drain') ? releaseCautions : [],
          fields: [partsField(culture, parts), filledField(culture, plan.litres)],
          because: [
            ...countLinks(plan),
            parameter('firstHarvestPerMl', 'and'),
            settingLink(culture.id, 'volume', { label: 'in it', quantity: litres(culture.volumeL), joins: 'and' }),
            parameter('share', 'times'),
            computedLink('rounded down to a jug’s mark', null, { label: 'to sieve', quantity: litres(plan.litres) }),
            ...(plan.eaters.length > 0
              ? [
                  settingLink(culture.id, 'feed links', {
                    label: 'feeds',
                    text: plan.eaters.map(({ batch }) => batch.name).join(', '),
                    joins: 'and',
                  }),
                  parameter('wantedPerMl', 'and'),
                  parameter('mostShare', 'and'),
                ]
              : [parameter('idleEveryDays', 'and')]),
          ],
        }),
        context: {
          parts: parts.map(({ name: _name, ...part }) => part),
          naupliiPerMl: plan.nauplii?.perMl ?? null,
        },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { parts: planned, naupliiPerMl } = ContextSchema.parse(context)
    const parts = partsOf(values, 'parts') ?? planned
    const takenL = litresOf(parts)
    if (takenL <= 0) return { facts: [] }
    return {
      facts: [
        { kind: 'harvest', subjectId, data: { volumeL: takenL, parts } },
        ...parts.flatMap((part) => fedFacts(part, { cultureId: subjectId, naupliiPerMl })),
        ...fillFacts(subjectId, { values, takenL }),
      ],
    }
  },
})

/** To the larvae that it feeds, as dense in each tank; all of it to the rest when there are none. */
function sharedOut({ litres: allL, eaters }: CopepodHarvest, rest: 'other_fish' | 'drain'): Part[] {
  const [first, ...others] = eaters
  if (!first) return [{ to: rest, name: restNames[rest], volumeL: allL }]
  const waterL = eaters.reduce((sum, { volumeL }) => sum + volumeL, 0)
  const part = ({ batch }: (typeof eaters)[number], volumeL: number): Part => ({
    to: 'larval_batch',
    subjectId: batch.id,
    name: batch.name,
    volumeL,
  })
  const rests = others.map((each) => part(each, measurableLDown((allL * each.volumeL) / waterL)))
  return [part(first, Number((allL - litresOf(rests)).toFixed(6))), ...rests.filter(({ volumeL }) => volumeL > 0)]
}

/** What a part that went to larvae fed them. */
function fedFacts(
  part: HarvestData['parts'][number],
  { cultureId, naupliiPerMl }: { cultureId: string; naupliiPerMl: number | null },
): FactDraft[] {
  if (part.to !== 'larval_batch' || part.subjectId === undefined) return []
  const number = naupliiPerMl === null ? {} : { animals: roundAnimals(naupliiPerMl * part.volumeL * 1000) }
  const data = { food: 'copepods', fromCultureId: cultureId, amountMl: part.volumeL * 1000, ...number } as const
  return [{ kind: 'feeding', subjectId: part.subjectId, data }]
}

function sieveSteps(culture: SnapshotCulture, takenL: number): Phrase[] {
  return [
    phrase('Count first, then harvest, then feed. Air off; a lamp at one side draws many nauplii there.'),
    phrase('Run {amount} through a sieve of {grown}, kept under water: what stays on it goes straight back.', {
      amount: litres(takenL),
      grown: { value: grownSieveUm, unit: 'um' },
    }),
    phrase('What passed goes over {nauplii}: those are the nauplii. Rinse them; the old water goes down the drain.', {
      nauplii: { value: naupliiSieveUm, unit: 'um' },
    }),
    phrase(`Both sieves belong to ${culture.name}: one rotifer carried in outgrows the copepods.`),
  ]
}

function countLinks({ count, nauplii, litres: takenL }: CopepodHarvest): Because[] {
  const grown = factLink(count.fact, { label: 'adults counted', quantity: perMl(count.densityPerMl) })
  if (!nauplii) return [grown]
  return [
    grown,
    factLink(nauplii.fact, { label: 'nauplii counted', quantity: perMl(nauplii.perMl), joins: 'and' }),
    computedLink('nauplii by litres', null, {
      label: 'in what is sieved, about',
      quantity: animals(roundAnimals(nauplii.perMl * takenL * 1000)),
      joins: 'and',
    }),
  ]
}
