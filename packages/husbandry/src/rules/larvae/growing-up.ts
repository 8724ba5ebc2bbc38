import { z } from 'zod'
import { daysBetween, localDate } from '../../calendar/husbandry-day.ts'
import { commonPractice, published } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, Gap, profileLink, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../../snapshot.ts'
import type { SpeciesProfile } from '../../species/index.ts'
import { batchNumbers } from '../../state/batch-state.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { metamorphosis } from '../../thermal/index.ts'
import { isDoneInRound, ordinalText } from '../done.ts'
import { choiceField, noteField, numberField } from '../fields.ts'
import { days, hours } from '../measures.ts'
import { periodicCare } from '../periodic-care.ts'
import { phrase, taskContent } from '../phrases.ts'
import { middleRound, spreadRounds } from '../rounds.ts'
import { numberOf, textOf } from '../values.ts'
import { batchById } from './prey-count.ts'

export const larvalWean = defineRule({
  id: 'larval-wean',
  title: 'Offer dry food',
  sentence:
    'From the species’ weaning day offer dry food in {feedsPerDay} feeds a day beside the live food, until it is all they eat.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'feeds a day',
      unit: 'times',
      default: 3,
      minimum: 1,
      maximum: 8,
      source: commonPractice('little and often'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < diet.species.feeding.weaningFirstDay.value) return []
    const rounds = spreadRounds(day, parameters.feedsPerDay)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).filter(({ data }) => data.food === 'dry')
    const { weaningFirstDay, weaningLastDay } = diet.species.feeding
    return rounds
      .filter((round) => !isDoneInRound(fed, { day, rounds, round }))
      .map((round) => ({
        roundId: round.id,
        content: taskContent({
          verb: 'feed' as const,
          title: phrase(
            `A pinch of dry food for ${batch.name}, day ${diet.day}${ordinalText(rounds.indexOf(round), rounds.length, 'feed')}`,
          ),
          steps: [
            phrase('Fine food, dusted on before the live food, while they are hungry.'),
            phrase('Watch whether they take it or spit it out. Siphon what sinks within the hour.'),
          ],
          fields: [
            choiceField({
              name: 'taken',
              label: 'Taken?',
              choices: [
                { value: 'none', label: 'hardly any' },
                { value: 'some', label: 'by some' },
                { value: 'all', label: 'by nearly all' },
              ],
            }),
          ],
          because: [
            profileLink(diet.species.id, weaningFirstDay.source.citation, {
              label: 'dry food from day',
              quantity: days(weaningFirstDay.value),
            }),
            profileLink(diet.species.id, weaningLastDay.source.citation, {
              label: 'only dry food from day',
              quantity: days(weaningLastDay.value),
              joins: 'and',
            }),
            parameter('feedsPerDay', 'and'),
          ],
        }),
        context: {},
      }))
  },
  record: ({ values, subjectId }) => {
    const taken = textOf(values, 'taken')
    const note = taken && { none: 'Hardly any take it.', some: 'Some take it.', all: 'Nearly all take it.' }[taken]
    return { facts: [{ kind: 'feeding', subjectId, data: { food: 'dry', ...(note ? { note } : {}) } }] }
  },
})

// Bars appear and larvae settle: Roux et al. 2019, Dev. Dyn. 248:545-568 (from memory).
export const larvalLook = defineRule({
  id: 'larval-look',
  title: 'Look at the larvae',
  sentence: 'Look at every batch every {everyDays} days: bellies, swimming, bars, bent backs.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'days between looks',
      unit: 'days',
      default: 1,
      minimum: 1,
      maximum: 14,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < 0) return []
    const last = factsUntil(snapshot, 'observation', { subjectId: batch.id, until: day.endsAt }).at(-1)
    if (last && elapsedDates(last.at, day.date, snapshot.room.timeZone) < parameters.everyDays) return []
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase(`Look at ${batch.name}, day ${diet.day}`),
          steps: [
            phrase('A cup of them against the light: full bellies are round and silvery or green.'),
            phrase('Schooling into the current, or lying, spinning, gulping at the surface?'),
            phrase('Bars showing, settling on walls and bottom? Bent backs, short gill covers?'),
          ],
          fields: [
            choiceField({
              name: 'seen',
              label: 'They are',
              isRequired: true,
              choices: [
                { value: 'well', label: 'well' },
                { value: 'hungry', label: 'hungry or thin' },
                { value: 'poorly', label: 'poorly' },
              ],
            }),
            choiceField({
              name: 'settled',
              label: 'Barred and settled',
              choices: [
                { value: 'none', label: 'none' },
                { value: 'some', label: 'some' },
                { value: 'most', label: 'most' },
              ],
            }),
            numberField({
              name: 'deformed',
              label: 'Deformed ones seen',
              unit: 'animals',
              minimum: 0,
              maximum: 10_000,
              likely: [0, 30],
              usual: 0,
            }),
            noteField(),
          ],
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            ...(last ? [factLink(last, { label: 'last looked at', joins: 'and' as const })] : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const seen = textOf(values, 'seen')
    const settled = textOf(values, 'settled')
    const deformed = Math.round(numberOf(values, 'deformed') ?? 0)
    const note = [
      seen === 'hungry' ? 'Hungry or thin.' : seen === 'poorly' ? 'Poorly.' : '',
      settled === 'most' ? settledNote : settled === 'some' ? 'Some barred and settled.' : '',
      deformed > 0 ? `${deformed} deformed.` : '',
      textOf(values, 'note') ?? '',
    ]
      .filter(Boolean)
      .join(' ')
    const signs = seen === 'well' ? ['all_well' as const] : seen === 'hungry' ? ['not_eating' as const] : []
    return {
      facts: [
        { kind: 'observation', subjectId, data: { signs, note: note || (seen === 'well' ? 'Well.' : 'Looked at.') } },
      ],
    }
  },
})

/** How the look says that a batch has settled; the move reads it. */
const settledNote = 'Most barred and settled.'

const elapsedDates = (at: string, date: string, timeZone: string): number =>
  daysBetween(localDate({ timeZone, at }), date)

/** When the middle fish of a batch should turn, by its tank's set point; null for young that are born settled. */
function settlingWindow(input: {
  snapshot: RoomSnapshot
  batch: SnapshotBatch
  tank: SnapshotTank
  species: SpeciesProfile
}) {
  const { snapshot, batch, tank, species } = input
  const hatch = snapshot.facts.find(
    (fact) => fact.kind === 'hatch' && (fact.subjectId === batch.id || fact.data.batchId === batch.id),
  )
  if (!species.larvalDuration || !hatch || tank.temperatureC < forecastC.from) return null
  const { window80 } = metamorphosis({
    hatchedAt: hatch.at,
    timeZone: snapshot.room.timeZone,
    species,
    temperatures: [],
    setPointC: tank.temperatureC,
  })
  return window80
}

// Temperatures that the thermal forecasts take; the room's settings end at 40 C.
const forecastC = { from: 10 }

const MoveContextSchema = z.object({ tankId: z.string(), onDate: z.string() })

export const larvalMove = defineRule({
  id: 'larval-move',
  title: 'Move settled young',
  sentence:
    'When most of a batch is seen to have settled and is on dry food, or {afterDays} after it should have been, count it and move it to grow-out.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    afterDays: {
      type: 'number',
      label: 'after the last likely day',
      unit: 'days',
      default: 7,
      minimum: 0,
      maximum: 60,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    const tank = tankOf(snapshot, batch)
    if (!diet || !tank || diet.day < diet.species.feeding.weaningFirstDay.value) return []
    const numbers = batchNumbers(snapshot, batch)
    if (numbers.now === 0) return []
    const seen = factsUntil(snapshot, 'observation', { subjectId: batch.id, until: day.endsAt }).findLast(
      ({ data }) => data.note?.includes(settledNote) === true,
    )
    const window = settlingWindow({ snapshot, batch, tank, species: diet.species })
    const lastLikelyDay = window
      ? daysBetween(batch.hatchedOn, window.to) - 1
      : diet.species.feeding.weaningLastDay.value
    const isOverdue =
      diet.day >= Math.max(lastLikelyDay, diet.species.feeding.weaningLastDay.value) + parameters.afterDays
    if (!seen && !isOverdue) return []
    const growOut = snapshot.tanks
      .filter(({ kind }) => kind === 'grow_out')
      .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
    const [to] = growOut
    if (!to) throw new Gap(`${batch.name} is ready to move: add a grow-out tank for it.`)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'move',
          title: phrase(`Move ${batch.name} to grow-out, counted`),
          steps: [
            phrase('No net: a jug or a cup under water. Count every one, twice if they are few.'),
            phrase(
              `Bring them over to the other tank’s salinity and warmth within half an hour (${tank.salinity} to ${to.salinity}).`,
            ),
            phrase('Lights low for the rest of the day; dry food in the evening.'),
          ],
          fields: [
            numberField({
              name: 'number',
              label: 'Young moved',
              isRequired: true,
              unit: 'animals',
              minimum: 1,
              maximum: 100_000,
              likely: [1, Math.max(50, (numbers.now ?? 500) * 1.2)],
              usual: numbers.now,
            }),
            choiceField({
              name: 'tank',
              label: 'Into',
              choices: growOut.map(({ id, name }) => ({ value: id, label: name })),
            }),
            noteField(),
          ],
          because: [
            ...(seen ? [factLink(seen, { label: 'seen', text: 'most barred and settled' })] : []),
            ...(window
              ? [
                  computedLink('metamorphosis', diet.species.larvalDuration?.medianDays.source.citation ?? null, {
                    label: 'likely to settle',
                    text: `${window.from} to ${window.to}`,
                    joins: 'and' as const,
                  }),
                ]
              : []),
            profileLink(diet.species.id, diet.species.feeding.weaningLastDay.source.citation, {
              label: 'on dry food from day',
              quantity: days(diet.species.feeding.weaningLastDay.value),
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
        },
      ],
    }
  },
})

export const larvalLight = periodicCare({
  id: 'larval-light',
  title: 'Check the larvae’s light',
  sentence: 'Check every {everyDays} days that larvae have 1,000-2,000 lux at the surface and 16 hours of light.',
  subject: 'larval_batch',
  station: 'larvae',
  verb: 'check',
  act: 'check_light',
  round: 'middle',
  everyDays: {
    default: 3,
    source: published('1,000-2,000 lux for A. clarkii larvae (methods of a larval experiment)'),
  },
  applies: ({ snapshot, subject, day }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < 0) return null
    return {
      title: `Check the light over ${batch.name}`,
      steps: [
        phrase('{from} to {to} at the surface; a little less on the first day.', {
          from: { value: 1000, unit: 'lux' },
          to: { value: 2000, unit: 'lux' },
        }),
        // 16L:8D faster than 12L or 24L in A. melanopus: Arvedlund et al. 2000, Naga 23(2):18-23 (from memory).
        phrase('{hours} of light, dark after that; no glare on one wall.', { hours: hours(16) }),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})
