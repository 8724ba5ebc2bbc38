import type { Because, Phrase, Quantity } from '@fryward/shared'
import { roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import { quarantineAcclimatiseDefinition } from '../../definitions/quarantine/quarantine-acclimatise.ts'
import type { FactOf } from '../../facts/fact.ts'
import type { ParameterValues } from '../../rule/parameters.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { arrivalIn } from '../../state/quarantine-state.ts'
import { fishWaterCautions, releaseCautions } from '../../task/cautions.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { degC, litres, measurableL, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'
import { mostForFish } from '../parts/bring-over.ts'

type Values = ParameterValues<typeof quarantineAcclimatiseDefinition.parameters>

export const quarantineAcclimatise = defineRule(quarantineAcclimatiseDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    const arrival = arrivalIn(snapshot, tank, day)
    if (!arrival || arrival.at < day.startsAt || arrival.data.litres === undefined) return []
    const done = lastCare(snapshot, 'fish_acclimatised', { subjectId: tank.id, day })
    if (done && done.at >= arrival.at) return []
    const rounds = roundsInOrder(day)
    const round = roundOfInstant(rounds, arrival.at) ?? rounds[0]!
    return [
      {
        roundId: round.id,
        dueAt: arrival.at,
        lateAfterMinutes: 30,
        content: taskContent({
          verb: 'move',
          title: titled('move', { to: [{ name: 'the tank’s water' }] }),
          steps: stepsFor(tank, arrival, parameters),
          cautions: [...releaseCautions.slice(0, -1), ...fishWaterCautions],
          fields: [
            numberField({
              name: 'dead',
              label: 'Dead on arrival',
              unit: 'animals',
              minimum: 0,
              maximum: 10_000,
              likely: [0, 5],
            }),
            noteField('What you saw'),
          ],
          because: whyLinks(tank, arrival, [
            parameter('floatMinutes', 'and'),
            parameter('additions', 'and'),
            parameter('apartMinutes', 'and'),
          ]),
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const dead = Math.round(numberOf(values, 'dead') ?? 0)
    const note = textOf(values, 'note')
    return {
      facts: [
        { kind: 'care', subjectId, data: { act: 'fish_acclimatised', ...(note ? { note } : {}) } },
        ...(dead > 0 ? [{ kind: 'loss', subjectId, data: { number: dead, of: 'adults' } } as const] : []),
      ],
    }
  },
})

// What fish bear at once, in salinity. common practice
const bearable = 1

/** Each addition as a part of the bag's water: enough of them that what is left of the difference is bearable. */
function partOfBag(difference: number, additions: number): number {
  const needed = (difference / bearable - 1) / additions
  return Math.min(1, Math.max(0.5, needed))
}

function stepsFor(tank: SnapshotTank, { data }: FactOf<'care'>, parameters: Values): Phrase[] {
  const { floatMinutes, additions, apartMinutes } = parameters
  const bagL = data.litres ?? 0
  const difference = data.salinity === undefined ? 0 : Math.abs(data.salinity - tank.salinity)
  const eachL = measurableL(bagL * partOfBag(difference, additions))
  const minutes = (value: number): Quantity => ({ value, unit: 'minutes' })
  const isFar = difference > mostForFish
  return [
    ...(isFar && data.salinity !== undefined
      ? [
          phrase(
            'They come from {theirs}, the tank is at {ours}: bring the tank to theirs first, and back over days.',
            {
              theirs: psu(data.salinity),
              ours: psu(tank.salinity),
            },
          ),
        ]
      : []),
    phrase('Lights low. Float the closed bag for {float}, until it is as warm as the tank ({temperature}).', {
      float: minutes(floatMinutes),
      temperature: degC(tank.temperatureC),
    }),
    phrase('Open it and pour fish and water into a clean bucket of their own, with gentle air.'),
    phrase(`Water of the tank, addition 1 of ${additions}: {each}.`, { each: litres(eachL) }),
    ...Array.from({ length: additions - 1 }, (_, index) =>
      phrase(`After {apart}, addition ${index + 2} of ${additions}: {each} more.`, {
        each: litres(eachL),
        apart: minutes(apartMinutes),
      }),
    ),
    phrase('After {apart} lift them over with a cup or a soft net: none of the bag’s water goes into the tank.', {
      apart: minutes(apartMinutes),
    }),
    phrase(
      'More than a day on the way, or the bag smells? Then be quick once it is open: its ammonia turns poisonous.',
    ),
    phrase('Bucket water down the drain. Lights low until tomorrow; first food tomorrow, a little.'),
  ]
}

function whyLinks(tank: SnapshotTank, arrival: FactOf<'care'>, parameters: Because[]): Because[] {
  return [
    factLink(arrival, { label: 'water they came in', quantity: litres(arrival.data.litres ?? 0) }),
    ...(arrival.data.salinity === undefined
      ? []
      : [factLink(arrival, { label: 'its salinity', quantity: psu(arrival.data.salinity), joins: 'and' as const })]),
    settingLink(tank.id, 'salinity', { label: `in ${tank.name}`, quantity: psu(tank.salinity), joins: 'and' }),
    ...parameters,
  ]
}
