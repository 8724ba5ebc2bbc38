import type { Quantity } from '@fryward/shared'
import { z } from 'zod'
import { dayMonth } from '../../calendar/day-month.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { larvalChilledFeedDefinition } from '../../definitions/larvae/larval-chilled-feed.ts'
import { chilledReserveDefinition } from '../../definitions/live-food/chilled-reserve.ts'
import { preyFeedRounds } from '../../plans/prey-feed-rounds.ts'
import { defineRule, type RuleDraft } from '../../rule/rule.ts'
import { ruleInForce } from '../../rule/rule-in-force.ts'
import { computedLink, factLink, planLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotBatch } from '../../snapshot/room-snapshot.ts'
import { type ChilledJar, chilledJars, chilledL } from '../../state/chilled-jars.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { chilledOrder } from '../../state/food-orders.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { choiceField, givenAmountField } from '../../task/fields.ts'
import { animals, litres, roundAnimals, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, numberOf } from '../../task/values.ts'
import { bringOverSteps } from '../parts/bring-over.ts'

const ContextSchema = z.object({
  cultureId: z.string(),
  chilledOn: z.string(),
  litres: z.number(),
  animals: z.number(),
})
type Context = z.infer<typeof ContextSchema>

export const larvalChilledFeed = defineRule(larvalChilledFeedDefinition, {
  draft: ({ snapshot, day, subject }) => {
    const batch = batchById(snapshot, subject.id)
    const order = chilledOrder(snapshot, batch, day.date)
    const isFed = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).some(({ data }) => data.isChilled)
    if (!order || isFed) return []
    return drawn(snapshot, order.animals, day).map((draw, index) =>
      draftOf(snapshot, { ...draw, batch, day, madeAt: order.madeAt, ordinal: index + 1 }),
    )
  },
  record: ({ context, values, subjectId }) => {
    const { cultureId, chilledOn, litres: volumeL, animals: planned } = ContextSchema.parse(context)
    if (choiceOf(values, 'swim', ['most', 'few']) === 'few') {
      const data = { act: 'discard_reserve', litres: volumeL, forDate: chilledOn } as const
      return { facts: [{ kind: 'care', subjectId: cultureId, data }] }
    }
    const given = { animals: Math.round(numberOf(values, 'animals') ?? planned), isChilled: true }
    return { facts: [{ kind: 'feeding', subjectId, data: { food: 'rotifers', fromCultureId: cultureId, ...given } }] }
  },
})

type Draw = { jar: ChilledJar; wanted: number }

/** So many live rotifers out of the jars of the room, the oldest first; fewer where there are not so many. */
function drawn(snapshot: RoomSnapshot, wanted: number, day: HusbandryDay): Draw[] {
  const { oldestDays } = ruleInForce(snapshot, chilledReserveDefinition).parameters
  let rest = wanted
  return chilledJars(snapshot, { day, oldestDays }).flatMap((jar): Draw[] => {
    const taken = Math.min(rest, jar.alive)
    rest -= taken
    return shareOf(jar, taken) > 0 ? [{ jar, wanted: taken }] : []
  })
}

/** In whole hundredths, as it is asked for: less of a jar than one is not worth the opening. */
const shareOf = (jar: ChilledJar, wanted: number): number => Number((wanted / jar.alive).toFixed(2))

/** The share of a jar to take; null where that is all of it. */
function partOf(jar: ChilledJar, wanted: number): Quantity | null {
  const part = shareOf(jar, wanted)
  return part < 1 ? share(part) : null
}

type Asked = Draw & { batch: SnapshotBatch; day: HusbandryDay; madeAt: string; ordinal: number }

function draftOf(snapshot: RoomSnapshot, { jar, wanted, batch, day, madeAt, ordinal }: Asked): RuleDraft<Context> {
  const { culture, harvest, chilledOn, ageDays, alive } = jar
  const tank = tankOf(snapshot, batch)
  const part = partOf(jar, wanted)
  const theJar = `the jar of ${culture.name} chilled on ${dayMonth(chilledOn)}`
  const number = animals(roundAnimals(wanted))
  return {
    roundId: (preyFeedRounds(snapshot, tank, day)[0] ?? firstRound(day)).id,
    ordinal,
    content: taskContent({
      verb: 'feed',
      title: titled(part ? 'give' : 'give_rest', {
        amount: part,
        thing: part ? `of ${theJar}` : theJar,
        details: [{ kind: 'amount', quantity: number, of: 'rotifers' }],
      }),
      amount: part,
      amountOf: part && 'what is left in the jar',
      steps: [
        phrase('Turn the jar over gently; a drop of it, warm for a quarter of an hour, under the lens: do most swim?'),
        part
          ? phrase('Sieve {part} of it, rinse, and resuspend in water from the larvae’s tank.', { part })
          : phrase('Sieve all of it, rinse, and resuspend in water from the larvae’s tank.'),
        ...(tank ? bringOverSteps({ from: culture, to: tank, volumeL: chilledL(harvest) }) : []),
        phrase('Beside the feeds from the cultures, not in place of them: the plan counts on both.'),
      ],
      fields: fieldsFor(number.value),
      because: [
        planLink(madeAt, { label: 'what no culture can give', quantity: number, joins: null }),
        factLink(harvest, { label: 'chilled', quantity: litres(chilledL(harvest)), joins: 'and' }),
        computedLink('survival in the cold', 'Assavaaree et al. 2001, Aquac. Res. 32:29-39', {
          label: `alive in it after ${ageDays} days, about`,
          quantity: animals(roundAnimals(alive)),
          joins: 'and',
        }),
      ],
    }),
    context: { cultureId: culture.id, chilledOn, litres: chilledL(harvest), animals: Math.round(wanted) },
  }
}

const fieldsFor = (planned: number) => [
  choiceField({
    ...{
      name: 'swim',
      label: 'They swim',
      isRequired: true,
      help: 'Where few do, the jar is not fed: down the drain.',
    },
    choices: [
      { value: 'most', label: 'most of them' },
      { value: 'few', label: 'few or none' },
    ],
  }),
  givenAmountField({
    ...{ name: 'animals', label: 'Given, alive', unit: 'animals' as const, planned },
    ...{ maximum: Math.max(1e6, planned * 10), step: 1000 },
  }),
]
