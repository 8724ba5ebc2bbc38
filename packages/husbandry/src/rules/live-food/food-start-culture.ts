import { DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import { rotiferStrains } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound, middleRound } from '../../calendar/rounds.ts'
import { foodStartCultureDefinition } from '../../definitions/live-food/food-cures.ts'
import { cultureSupply } from '../../plans/culture-supply.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule, type RuleDraft } from '../../rule/rule.ts'
import { computedLink, planLink } from '../../rule/why.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { densityAt } from '../../state/culture-state.ts'
import { type Cure, curesOf } from '../../state/cures.ts'
import { givenAmountField } from '../../task/fields.ts'
import { animals, litres, measurableLDown, measurableLUp, perMl, psu, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

/** What a new culture is made like. */
export const VesselSchema = z.object({
  volumeL: z.number(),
  temperatureC: z.number(),
  salinity: z.number(),
  strain: z.enum(rotiferStrains),
  concentrateId: z.string().nullable(),
})
const ContextSchema = VesselSchema.extend({ parentCultureId: z.string(), drawnL: z.number(), animalsPerL: z.number() })

export const vesselLike = (
  { temperatureC, salinity, strain, concentrateId }: SnapshotCulture,
  volumeL: number,
): z.infer<typeof VesselSchema> => ({ volumeL, temperatureC, salinity, strain: strain ?? 'L', concentrateId })

export const foodStartCulture = defineRule(foodStartCultureDefinition, {
  draft: ({ snapshot, day }) =>
    curesOf(snapshot, 'start_culture', day)
      .filter(({ change }) => change.onDate <= day.date)
      .flatMap((cure, index) => startOf(snapshot, { cure, day, ordinal: index + 1 })),
  record: ({ context, values }) => {
    const { parentCultureId, drawnL: plannedL, animalsPerL, ...vessel } = ContextSchema.parse(context)
    const drawnL = numberOf(values, 'drawnL') ?? plannedL
    const startDensityPerMl = Number(((drawnL * animalsPerL) / (vessel.volumeL * 1000)).toPrecision(3))
    return { facts: [], creations: [{ kind: 'culture', ...vessel, parentCultureId, drawnL, startDensityPerMl }] }
  },
})

type Asked = { cure: Cure<'start_culture'>; day: HusbandryDay; ordinal: number }

/** One culture to start, out of one that stands; nothing where that has ended since. */
function startOf(snapshot: RoomSnapshot, { cure, day, ordinal }: Asked): RuleDraft<z.infer<typeof ContextSchema>>[] {
  const { change, fact } = cure
  const parent = snapshot.cultures.find(({ id }) => id === change.cultureId)
  if (!parent) return []
  const density = densityAt(snapshot, parent, { at: firstRound(day).startsAt, until: day.endsAt })
  if (!density || density.densityPerMl <= 0)
    throw new Gap(`A culture is to be started from ${parent.name}: count ${parent.name}, and the amount follows.`)
  const animalsPerL = density.densityPerMl * 1000 * (1 - DEFAULT_SIEVING_LOSS)
  // To the next mark of a jug, so that it does not begin with fewer than the plan counts on.
  const wantedL = measurableLUp(change.animals / animalsPerL)
  const drawnL = Math.min(wantedL, measurableLDown(cultureSupply(snapshot, parent, day).leftL))
  if (drawnL <= 0)
    throw new Gap(
      `A culture is to be started from ${parent.name}, which has given all it can today. Start it tomorrow.`,
    )
  return [
    {
      roundId: middleRound(day).id,
      ordinal,
      isForStandIn: false,
      content: taskContent({
        verb: 'start',
        title: titled('start', {
          thing: 'a rotifer culture',
          details: [
            { kind: 'amount', quantity: litres(change.volumeL), of: 'in all' },
            { kind: 'amount', quantity: litres(drawnL), of: `of ${parent.name}, sieved` },
          ],
        }),
        amount: litres(drawnL),
        amountOf: `${parent.name}, sieved`,
        steps: [
          phrase(
            'Fill a clean, disinfected and rinsed vessel of {volume} with new water of {salinity}, as warm as it is there.',
            {
              volume: litres(change.volumeL),
              salinity: psu(parent.salinity),
            },
          ),
          phrase(`Sieve {amount} of ${parent.name}, rinse well, and put the animals in.`, { amount: litres(drawnL) }),
          phrase('Give it its own tools, and air that no other culture hangs on, where there is any.'),
          phrase('Once this is signed off it has a page of its own: give it its name there, and count it tomorrow.'),
          ...(drawnL < wantedL
            ? [phrase(`${parent.name} cannot give more today: it starts with fewer than the plan counts on.`)]
            : []),
        ],
        fields: [
          givenAmountField({
            ...{ name: 'drawnL', label: `Taken out of ${parent.name}`, unit: 'L', planned: drawnL },
            ...{ maximum: parent.volumeL, step: 0.1 },
          }),
        ],
        because: [
          planLink(fact.data.planMadeAt, {
            label: 'to start with',
            quantity: animals(roundAnimals(change.animals)),
            joins: null,
          }),
          ...density.because.map((link, index) => (index === 0 ? { ...link, joins: 'divided_by' as const } : link)),
          computedLink('what is left alive after sieving', null, {
            label: `in ${parent.name}`,
            quantity: perMl(Number((animalsPerL / 1000).toPrecision(3))),
            joins: 'and',
          }),
          computedLink('to a jug’s mark, and no more than it may give', null, {
            label: `of ${parent.name}`,
            quantity: litres(drawnL),
          }),
        ],
      }),
      context: { ...vesselLike(parent, change.volumeL), parentCultureId: parent.id, drawnL, animalsPerL },
    },
  ]
}
