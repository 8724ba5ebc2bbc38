import { z } from 'zod'
import { addDays, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { foodBuyInDefinition } from '../../definitions/live-food/food-cures.ts'
import { defineRule, type RuleDraft } from '../../rule/rule.ts'
import { planLink } from '../../rule/why.ts'
import { factsOf } from '../../snapshot/facts-of.ts'
import type { RoomSnapshot } from '../../snapshot/room-snapshot.ts'
import { type Cure, curesOf } from '../../state/cures.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { givenAmountField, noteField } from '../../task/fields.ts'
import { animals, days, litres, psu, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'
import { VesselSchema, vesselLike } from './food-start-culture.ts'

const ContextSchema = z.discriminatedUnion('step', [
  z.object({ step: z.literal('order'), roomId: z.string(), forDate: z.string() }),
  z.object({ step: z.literal('arrive'), animals: z.number(), vessel: VesselSchema }),
])
type Context = z.infer<typeof ContextSchema>

export const foodBuyIn = defineRule(foodBuyInDefinition, {
  draft: ({ snapshot, day, parameters, parameter }) =>
    curesOf(snapshot, 'buy_in', day).flatMap((cure, index): RuleDraft<Context>[] => {
      const ordinal = index + 1
      if (cure.change.onDate <= day.date) return arrivalOf(snapshot, { cure, day, ordinal })
      if (isOrdered(snapshot, cure)) return []
      const lastOrder = addDays(cure.change.onDate, -parameters.deliveryDays)
      return [
        orderOf(snapshot, { cure, day, ordinal, isLastDay: day.date >= lastOrder, why: parameter('deliveryDays') }),
      ]
    }),
  record: ({ context, values }) => {
    const kept = ContextSchema.parse(context)
    if (kept.step === 'order') {
      const note = textOf(values, 'note')
      const data = { act: 'order_rotifers' as const, forDate: kept.forDate, ...(note ? { note } : {}) }
      return { facts: [{ kind: 'care', subjectId: kept.roomId, data }] }
    }
    const came = numberOf(values, 'animals') ?? kept.animals
    const volumeL = numberOf(values, 'volumeL') ?? kept.vessel.volumeL
    const startDensityPerMl = Number((came / (volumeL * 1000)).toPrecision(3))
    const vessel = { ...kept.vessel, volumeL, parentCultureId: null, drawnL: 0, startDensityPerMl }
    return { facts: [], creations: [{ kind: 'culture', ...vessel }] }
  },
})

const isOrdered = (snapshot: RoomSnapshot, { fact, change }: Cure<'buy_in'>): boolean =>
  factsOf(snapshot, 'care', snapshot.room.id).some(
    ({ at, data }) => data.act === 'order_rotifers' && at >= fact.at && data.forDate === change.onDate,
  )

type Asked = { cure: Cure<'buy_in'>; day: HusbandryDay; ordinal: number }
type OrderAsked = Asked & { isLastDay: boolean; why: ReturnType<typeof planLink> }

function orderOf(snapshot: RoomSnapshot, { cure, day, ordinal, isLastDay, why }: OrderAsked): RuleDraft<Context> {
  const { change, fact } = cure
  const amount = animals(roundAnimals(change.animals))
  return {
    roundId: firstRound(day).id,
    ordinal,
    isForStandIn: false,
    content: taskContent({
      verb: 'check',
      title: titled('order', {
        amount,
        thing: 'live rotifers',
        details: [
          { kind: 'to_come_on', date: change.onDate },
          ...(isLastDay ? [{ kind: 'because' as const, words: ['today is the last day for it'] }] : []),
        ],
      }),
      amount,
      amountOf: 'live rotifers',
      steps: [
        phrase('Ask how many come alive, and that the parcel is kept cool and does not lie over a weekend.'),
        phrase('Say in the note when it is to come, so that whoever is here that day expects it.'),
      ],
      fields: [noteField()],
      because: [planLink(fact.data.planMadeAt, { label: 'missing without them', quantity: amount, joins: null }), why],
    }),
    context: { step: 'order', roomId: snapshot.room.id, forDate: change.onDate },
  }
}

// A parcel is set up as dense as one starts any vessel, some 200 per mL at most. common practice
const startPerMl = 200

/** What came, into water like that of the room's other rotifers; nothing where no vessel says what that is. */
function arrivalOf(snapshot: RoomSnapshot, { cure, day, ordinal }: Asked): RuleDraft<Context>[] {
  const { change, fact } = cure
  const model = snapshot.cultures.find(({ kind }) => kind === 'rotifer')
  const vessel = model
    ? vesselLike(model, Math.max(1, Math.ceil(change.animals / (startPerMl * 1000))))
    : { volumeL: 10, temperatureC: 25, salinity: 25, strain: 'L' as const, concentrateId: null }
  const amount = animals(roundAnimals(change.animals))
  return [
    {
      roundId: firstRound(day).id,
      ordinal,
      isForStandIn: false,
      content: taskContent({
        verb: 'start',
        title: titled('start', {
          thing: 'a culture with the rotifers that come today',
          details: [{ kind: 'amount', quantity: amount, of: 'ordered' }],
        }),
        amount,
        amountOf: 'live rotifers',
        steps: [
          phrase(
            'Look at a drop first: most of them swim. If few do, say so to whoever sent them, and count before you feed.',
          ),
          phrase(
            'Let them come to the warmth of the vessel, sieve and rinse them: the water of the parcel goes nowhere.',
          ),
          phrase('About {volume} of clean water at {salinity}; they may feed larvae from today on.', {
            volume: litres(vessel.volumeL),
            salinity: psu(vessel.salinity),
          }),
          phrase('Keep their tools apart for {days}: what comes from elsewhere may bring something along.', {
            days: days(14),
          }),
        ],
        cautions: releaseCautions,
        fields: [
          givenAmountField({
            ...{ name: 'animals', label: 'Alive', unit: 'animals', planned: amount.value },
            ...{ maximum: 1e10, step: 100_000 },
          }),
          givenAmountField({
            ...{ name: 'volumeL', label: 'Into', unit: 'L', planned: vessel.volumeL },
            ...{ maximum: 1000, step: 0.5 },
          }),
        ],
        because: [planLink(fact.data.planMadeAt, { label: 'bought in', quantity: amount, joins: null })],
      }),
      context: { step: 'arrive', animals: amount.value, vessel },
    },
  ]
}
