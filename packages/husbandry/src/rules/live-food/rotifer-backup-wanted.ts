import { DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import type { TaskField } from '@fryward/shared'
import { z } from 'zod'
import { daysBetween, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { afterMorning, firstRound } from '../../calendar/rounds.ts'
import { rotiferBackupWantedDefinition } from '../../definitions/live-food/rotifer-backup-wanted.ts'
import { cultureSupply, isSound } from '../../plans/culture-supply.ts'
import type { ParameterValues } from '../../rule/parameters.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { isCareDue } from '../../state/care.ts'
import { type CultureDensity, cultureStartDate, densityAt } from '../../state/culture-state.ts'
import { choiceField, givenAmountField, numberField } from '../../task/fields.ts'
import { litres, measurableL, measurableLDown, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, numberOf } from '../../task/values.ts'
import { VesselSchema, vesselLike } from './food-start-culture.ts'

const answers = ['started', 'later'] as const
const ContextSchema = VesselSchema.extend({ parentCultureId: z.string(), drawnL: z.number(), animalsPerL: z.number() })

export const rotiferBackupWanted = defineRule(rotiferBackupWantedDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const rotifers = snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
    const about = { subjectId: subject.id, day, daysWithout: Number.POSITIVE_INFINITY }
    if (rotifers.some(({ isBackup }) => isBackup)) return []
    if (!isCareDue(snapshot, 'check_backup', { ...about, everyDays: parameters.everyDays })) return []
    const start = startFrom(snapshot, rotifers, { day, parameters })
    if (!start) return []
    const { culture, drawnL, animalsPerL, density } = start
    return [
      {
        roundId: afterMorning(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'start',
          title: titled('start', {
            thing: 'a second rotifer culture as backup',
            details: [{ kind: 'amount', quantity: litres(drawnL), of: `of ${culture.name}, sieved` }],
          }),
          amount: litres(drawnL),
          amountOf: `${culture.name}, sieved`,
          steps: [
            phrase(
              'One crash must not take the food of every larva: a second vessel, kept for the day that one is lost.',
            ),
            phrase(
              'A clean, disinfected and rinsed vessel with {volume} of new water at {salinity}, as warm as there.',
              {
                volume: litres(culture.volumeL),
                salinity: psu(culture.salinity),
              },
            ),
            phrase(`Sieve {amount} of ${culture.name}, rinse well, and put the animals in.`, {
              amount: litres(drawnL),
            }),
            phrase(
              'Its own tools, air line, feed bottle and shelf. It has a page of its own then: give it a name there.',
            ),
          ],
          fields: fieldsFor(culture, drawnL),
          because: [
            ...density.because,
            parameter('fromPerMl', 'and'),
            parameter('fromAgeDays', 'and'),
            parameter('startPerMl', 'and'),
            settingLink(culture.id, 'volume', {
              label: 'a vessel like it',
              quantity: litres(culture.volumeL),
              joins: 'times',
            }),
            computedLink('to a jug’s mark, and no more than it may give', null, {
              label: `of ${culture.name}`,
              quantity: litres(drawnL),
            }),
          ],
        }),
        context: { ...vesselLike(culture, culture.volumeL), parentCultureId: culture.id, drawnL, animalsPerL },
      },
    ]
  },
  check: (values) =>
    choiceOf(values, 'answer', answers) === 'started' && numberOf(values, 'volumeL') === undefined
      ? [{ path: 'values.volumeL', message: 'Say how many litres the vessel holds: every amount follows from it.' }]
      : [],
  record: ({ context, values, subjectId }) => {
    if (choiceOf(values, 'answer', answers) !== 'started')
      return { facts: [{ kind: 'care', subjectId, data: { act: 'check_backup' } }] }
    const { drawnL: plannedL, animalsPerL, ...vessel } = ContextSchema.parse(context)
    const drawnL = numberOf(values, 'drawnL') ?? plannedL
    const volumeL = numberOf(values, 'volumeL') ?? vessel.volumeL
    const startDensityPerMl = Number(((drawnL * animalsPerL) / (volumeL * 1000)).toPrecision(3))
    return {
      facts: [],
      creations: [{ kind: 'culture', ...vessel, volumeL, drawnL, startDensityPerMl, isBackup: true }],
    }
  },
})

type Values = ParameterValues<typeof rotiferBackupWantedDefinition.parameters>
type Start = { culture: SnapshotCulture; density: CultureDensity; drawnL: number; animalsPerL: number }

/** The fullest sound culture that is old and thick enough, and what it gives; null where there is nothing to start from. */
function startFrom(
  snapshot: RoomSnapshot,
  rotifers: readonly SnapshotCulture[],
  { day, parameters }: { day: HusbandryDay; parameters: Values },
): Start | null {
  const starts = rotifers.flatMap((culture): Start[] => {
    const ageDays = daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date)
    const density = densityAt(snapshot, culture, { at: firstRound(day).startsAt, until: day.endsAt })
    if (!density || density.densityPerMl < parameters.fromPerMl || ageDays <= parameters.fromAgeDays) return []
    const animalsPerL = density.densityPerMl * 1000 * (1 - DEFAULT_SIEVING_LOSS)
    const wantedL = measurableL((parameters.startPerMl * culture.volumeL * 1000) / animalsPerL)
    const drawnL = Math.min(wantedL, measurableLDown(cultureSupply(snapshot, culture, day).leftL))
    return drawnL > 0 && isSound(snapshot, culture, day) ? [{ culture, density, drawnL, animalsPerL }] : []
  })
  const animals = ({ culture, animalsPerL }: Start) => culture.volumeL * animalsPerL
  return starts.sort((a, b) => animals(b) - animals(a) || (a.culture.id < b.culture.id ? -1 : 1))[0] ?? null
}

const fieldsFor = (culture: SnapshotCulture, drawnL: number): TaskField[] => [
  choiceField({
    ...{ name: 'answer', label: 'The backup', isRequired: true },
    choices: [
      { value: 'started', label: 'is started' },
      { value: 'later', label: 'has to wait' },
    ],
  }),
  numberField({
    ...{ name: 'volumeL', label: 'Its vessel holds', help: 'Only once it is started.', unit: 'L' },
    ...{ minimum: 0.5, maximum: 2000, likely: [1, culture.volumeL * 3] as const, usual: null, step: 0.5 },
  }),
  givenAmountField({
    ...{ name: 'drawnL', label: `Taken out of ${culture.name}`, unit: 'L', planned: drawnL },
    ...{ maximum: culture.volumeL, step: 0.1 },
  }),
]
