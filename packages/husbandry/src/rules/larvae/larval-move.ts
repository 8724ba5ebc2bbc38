import type { Because, Phrase, TaskField } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { middleRound } from '../../calendar/rounds.ts'
import { larvalMoveDefinition } from '../../definitions/larvae/larval-move.ts'
import { larvalWeanDefinition } from '../../definitions/larvae/larval-wean.ts'
import { rememberedByContent } from '../../memo/remembered.ts'
import { type GrowOutPlace, growOutFor } from '../../plans/grow-out-room.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { ruleInForce } from '../../rule/rule-in-force.ts'
import { computedLink, factLink, profileLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import type { SpeciesProfile } from '../../species/index.ts'
import { usualLengthsMm } from '../../species/juvenile-growth.ts'
import { batchNumbers } from '../../state/batch-state.ts'
import { bookLines } from '../../state/book-lines.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { type LarvalDiet, larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { temperaturesOf } from '../../state/water-reads.ts'
import { daysWeaned } from '../../state/weaned.ts'
import { choiceField, deformedField, lengthField, noteField, numberField, seenOfYoung } from '../../task/fields.ts'
import { foodName } from '../../task/foods.ts'
import { animals, days, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'
import { youngWords } from '../../task/young.ts'
import { type Forecast, metamorphosis } from '../../thermal/index.ts'
import { mostForFish } from '../parts/bring-over.ts'

/** When the middle fish of a batch should turn, by its tank's warmth as measured and set; null for young that are born settled. */
function settlingWindow(input: {
  snapshot: RoomSnapshot
  batch: SnapshotBatch
  tank: SnapshotTank
  species: SpeciesProfile
}) {
  const { snapshot, batch, tank, species } = input
  const hatch = bookLines(snapshot, batch.id).find(({ way }) => way === 'begin')
  if (!species.larvalDuration || !hatch || tank.temperatureC < forecastC.from) return null
  const asked = {
    hatchedAt: hatch.at,
    timeZone: snapshot.room.timeZone,
    temperatures: temperaturesOf(snapshot, tank.id),
    setPointC: tank.temperatureC,
  }
  return windows({ ...asked, species: species.id }, () => metamorphosis({ ...asked, species }).window80)
}

const windows = rememberedByContent<Forecast['window80']>(1000)

// Temperatures that the thermal forecasts take; the room's settings end at 40 C.
const forecastC = { from: 10 }

const MoveContextSchema = z.object({ tankId: z.string(), onDate: z.string() })

export const larvalMove = defineRule(larvalMoveDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    const tank = tankOf(snapshot, batch)
    if (!diet || !tank || diet.day < diet.species.feeding.weaningFirstDay.value) return []
    const numbers = batchNumbers(snapshot, batch)
    const seen = factsUntil(snapshot, 'observation', { subjectId: batch.id, until: day.endsAt }).findLast(({ data }) =>
      data.signs.includes('settled'),
    )
    const window = settlingWindow({ snapshot, batch, tank, species: diet.species })
    const lastDay = lastLikelyDay(batch, { window, species: diet.species })
    // Settled is not yet weaned: until they eat what grow-out feeds they stay where their live food is.
    const isReady = hasSettled(snapshot, { batch, day, isSeen: seen !== undefined })
    if (!isReady && diet.day < lastDay + parameters.afterDays) return []
    const places = growOutFor(snapshot, numbers.now)
    const [place] = places
    if (!place) throw new Gap(`${batch.name} is ready to move: add a grow-out tank for it.`)
    if (place.room === 0)
      throw new Gap(`${batch.name} is ready to move, and no grow-out tank has room: place fish, or add a tank.`)
    const { tank: to } = place
    const number = numbers.now === null ? null : Math.min(numbers.now, place.room)
    const young = youngWords(batch)
    const food = foodName(diet.species.feeding.weanedTo.value)
    const isSplit = numbers.now !== null && numbers.now > place.room
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'move',
          title: titled('move', {
            to: [{ name: to.name }],
            details: [
              ...(isSplit ? [{ kind: 'amount' as const, quantity: animals(place.room), of: 'at most' }] : []),
              also('counted'),
            ],
          }),
          steps: [
            ...(isReady
              ? []
              : [
                  phrase(
                    `Nobody has written that nearly all take ${food}: move only those that take it in front of you. The others stay where their live food is.`,
                  ),
                ]),
            phrase(
              'No net: a jug or a cup under water. Count every one, twice if they are few; five of them to a ruler.',
            ),
            ...acrossSteps(tank, to),
            ...(isSplit
              ? [
                  phrase(`${to.name} has room for {room} and no more. Where the rest may go: ${othersWith(places)}.`, {
                    room: animals(place.room),
                  }),
                ]
              : []),
            phrase(`Lights low for the rest of the day; ${food} in the evening.`),
          ],
          looks: young.settle ? ['settled_larvae', 'deformed_larvae'] : ['deformed_larvae'],
          fields: moveFields({ number, diet, growOut: places.map(({ tank: each }) => each) }),
          because: [
            ...(seen ? [factLink(seen, { label: 'seen', text: 'most barred and settled' })] : []),
            ...settlingLinks(diet.species, window),
            settingLink(to.id, 'volume and fish in it', {
              label: `room in ${to.name}`,
              quantity: animals(place.room),
              joins: 'and',
            }),
            parameter('afterDays', 'and'),
          ],
        }),
        context: { tankId: to.id, onDate: day.date },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const planned = MoveContextSchema.parse(context)
    const number = Math.round(numberOf(values, 'number') ?? 0)
    const note = textOf(values, 'note')
    return {
      facts: note ? [{ kind: 'observation', subjectId, data: { note } }] : [],
      creations: [
        {
          kind: 'juvenile_group',
          tankId: textOf(values, 'tank') ?? planned.tankId,
          fromBatchId: subjectId,
          settledOn: planned.onDate,
          number,
          ...seenOfYoung(values),
        },
      ],
    }
  },
})

/** How young get used to the water of another tank. */
function acrossSteps(from: SnapshotTank, to: SnapshotTank): Phrase[] {
  const waters = { theirs: psu(from.salinity), ours: psu(to.salinity) }
  const drip = 'Half an hour on a drip line of water from'
  if (from.salinity === to.salinity) return [phrase(`${drip} ${to.name}, until they are as warm as it is.`)]
  const isFar = Math.abs(from.salinity - to.salinity) > mostForFish
  return [
    ...(isFar
      ? [
          phrase(
            `${from.name} is at {theirs}, ${to.name} at {ours}: too far to move them today. Change ${from.name} towards it over days, until {apart} or less are between them.`,
            { ...waters, apart: psu(mostForFish) },
          ),
        ]
      : []),
    phrase(`${drip} ${to.name}: from {theirs} to {ours}, and as warm as it is.`, waters),
  ]
}

/** The tanks that take the rest of a batch, by name and room; an honest word where there is none. */
function othersWith([, ...others]: readonly GrowOutPlace[]): string {
  const withRoom = others.filter(({ room }) => room > 0)
  if (withRoom.length === 0) return 'no other grow-out tank has room, so they stay until one has'
  return withRoom.map(({ tank, room }) => `${tank.name} (${room})`).join(', ')
}

/** Young that a parent let go have no settling to be seen: that they are weaned is all. */
function hasSettled(
  snapshot: RoomSnapshot,
  { batch, day, isSeen }: { batch: SnapshotBatch; day: HusbandryDay; isSeen: boolean },
): boolean {
  if (!youngWords(batch).settle) return daysWeaned(snapshot, batch, day) !== null
  return isSeen && isWeaned(snapshot, batch, day)
}

/** Nearly all take what they are weaned to; where a room offers none as a task, nobody says so and the eye that saw them settle decides. */
function isWeaned(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): boolean {
  return !ruleInForce(snapshot, larvalWeanDefinition).isOn || daysWeaned(snapshot, batch, day) !== null
}

type Window = Forecast['window80'] | null

/** Day of life by which a batch should have settled and be weaned. */
function lastLikelyDay(batch: SnapshotBatch, given: { window: Window; species: SpeciesProfile }): number {
  const lastWeaning = given.species.feeding.weaningLastDay.value
  if (!given.window) return lastWeaning
  return Math.max(lastWeaning, daysBetween(batch.hatchedOn, given.window.to) - 1)
}

function moveFields(about: { number: number | null; diet: LarvalDiet; growOut: readonly SnapshotTank[] }): TaskField[] {
  const { number, growOut } = about
  const { day, species } = about.diet
  const { deformed } = youngWords({ species: species.id })
  return [
    numberField({
      name: 'number',
      label: 'Young moved',
      isRequired: true,
      unit: 'animals',
      minimum: 1,
      maximum: 100_000,
      likely: [1, Math.max(50, (number ?? 500) * 1.2)],
    }),
    choiceField({
      name: 'tank',
      label: 'Into',
      choices: growOut.map(({ id, name }) => ({ value: id, label: name })),
    }),
    lengthField(usualLengthsMm(species.growth, day)),
    deformedField(deformed),
    noteField(),
  ]
}

function settlingLinks(species: SpeciesProfile, window: Window): Because[] {
  const { weaningLastDay, weanedTo } = species.feeding
  return [
    ...(window
      ? [
          computedLink('settling forecast', species.larvalDuration?.medianDays.source.citation ?? null, {
            label: 'likely to settle',
            text: `${window.from} to ${window.to}`,
            joins: 'and',
          }),
        ]
      : []),
    profileLink(species.tradeName, weaningLastDay.source.citation, {
      label: `old when ${foodName(weanedTo.value)} is all`,
      quantity: days(weaningLastDay.value),
      joins: 'and',
    }),
  ]
}
