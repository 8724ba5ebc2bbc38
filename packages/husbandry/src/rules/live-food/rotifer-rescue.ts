import { DEFAULT_SIEVING_LOSS, INOCULUM_RANGE_PER_ML, inoculum } from '@fryward/live-feed'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, published } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { cultureById, densityAt } from '../../state/culture-state.ts'
import { disinfectionCautions, releaseCautions } from '../cautions.ts'
import { givenAmountField } from '../fields.ts'
import { litres, measurableL, measurableLDown, perMl, share } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import { numberOf } from '../values.ts'

const ContextSchema = z.object({
  plannedL: z.number(),
  volumeL: z.number(),
  sourceId: z.string().nullable(),
  animalsPerL: z.number(),
})
// Never so much that the rescuer is lost too. common practice
const mostOfSource = 0.5
// A rescuer that is hardly thicker than what it should start rescues nobody. common practice
const thinnestSourcePerMl = 50

export const rotiferRescue = defineRule({
  id: 'rotifer-rescue',
  title: 'Start a crashed culture anew',
  sentence:
    'When a rotifer culture has fallen under {crashShare} of its densest count of the last weeks, empty it and start it anew at {startPerMl} from the backup.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    crashShare: {
      type: 'number',
      label: 'of the densest count, crashed under that',
      unit: 'share',
      default: 0.1,
      minimum: 0.01,
      maximum: 0.5,
      source: commonPractice('a tenth of what it was'),
    },
    startPerMl: {
      type: 'number',
      label: 'rotifers to start with',
      unit: 'per_mL',
      default: 63,
      minimum: 5,
      maximum: 500,
      source: published('50-150 per mL for an inoculum: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361)'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const { counts, inoculations } = cultureRecord(snapshot, culture, { until: day.endsAt })
    const last = counts.at(-1)
    const densest = counts.reduce<(typeof counts)[number] | undefined>(
      (best, count) => (best && best.densityPerMl >= count.densityPerMl ? best : count),
      undefined,
    )
    if (!last || !densest || last.densityPerMl >= parameters.crashShare * densest.densityPerMl) return []
    if (inoculations.some(({ fact }) => fact.at > last.fact.at)) return []
    const source = rescuerOf(snapshot, culture, day)
    const plannedL = source ? litresToStart({ culture, source, startPerMl: parameters.startPerMl }) : 0
    const perL = source ? source.densityPerMl * 1000 * (1 - DEFAULT_SIEVING_LOSS) : 0
    const start = source && inoculum({ animals: plannedL * perL, volumeL: culture.volumeL })
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'restart',
          title: source
            ? phrase(`{amount} of ${source.culture.name}, sieved, to start anew`, {
                amount: litres(plannedL),
              })
            : phrase('Crashed: start it anew'),
          amount: source ? litres(plannedL) : null,
          amountOf: source ? `${source.culture.name}, sieved` : null,
          steps: [
            phrase(
              `See to ${source?.culture.name ?? 'every other culture'} first, and only then touch ${culture.name}.`,
            ),
            phrase(`Empty ${culture.name} down the drain; disinfect vessel, air stone and tools, rinse, dry.`),
            phrase('Fill it with new water, matched, and put the sieved animals in.'),
            ...(source
              ? []
              : [phrase('No other culture can give any: take the chilled reserve, or buy a starter in today.')]),
            ...(start?.verdict === 'too-thin'
              ? [phrase('That is a thin start: feed it by its count, and leave it alone for a week.')]
              : []),
          ],
          cautions: [...releaseCautions.slice(0, 1), ...disinfectionCautions],
          fields: source
            ? [
                givenAmountField({
                  name: 'amountL',
                  label: `Of ${source.culture.name}`,
                  unit: 'L',
                  planned: plannedL,
                  maximum: source.culture.volumeL,
                  step: 0.1,
                }),
              ]
            : [],
          because: [
            factLink(last.fact, { label: 'counted', quantity: perMl(last.densityPerMl) }),
            factLink(densest.fact, {
              label: 'densest count',
              quantity: perMl(densest.densityPerMl),
              joins: 'divided_by',
            }),
            computedLink('its counts', null, {
              label: 'left',
              quantity: share(Number((last.densityPerMl / densest.densityPerMl).toFixed(3))),
            }),
            parameter('crashShare', 'and'),
            parameter('startPerMl', 'and'),
            settingLink(culture.id, 'volume', {
              label: 'in it',
              quantity: litres(culture.volumeL),
              joins: 'times',
            }),
            ...(source
              ? source.because.map((link, index) => (index === 0 ? { ...link, joins: 'divided_by' as const } : link))
              : []),
            computedLink(
              'animals to start with',
              `${INOCULUM_RANGE_PER_ML.lower}-${INOCULUM_RANGE_PER_ML.upper} per mL: ICAR e-course on rotifers`,
              { label: source ? 'to take' : 'no culture to take it from', quantity: source ? litres(plannedL) : null },
            ),
          ],
        }),
        context: { plannedL, volumeL: culture.volumeL, sourceId: source?.culture.id ?? null, animalsPerL: perL },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, volumeL, sourceId, animalsPerL } = ContextSchema.parse(context)
    const care = { kind: 'care', subjectId, data: { act: 'restart_culture', litres: volumeL } } as const
    if (sourceId === null) return { facts: [care] }
    const takenL = numberOf(values, 'amountL') ?? plannedL
    return {
      facts: [
        care,
        {
          kind: 'harvest',
          subjectId: sourceId,
          data: { volumeL: takenL, parts: [{ to: 'culture', subjectId, volumeL: takenL }] },
        },
        {
          kind: 'inoculation',
          subjectId,
          data: { animals: Math.round(takenL * animalsPerL), fromCultureId: sourceId },
        },
      ],
    }
  },
})

/** A backup of the same strain before any other culture, the densest first. */
function rescuerOf(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay) {
  const moment = { at: firstRound(day).startsAt, until: day.endsAt }
  return snapshot.cultures
    .filter((each) => each.id !== culture.id && each.kind === 'rotifer' && each.strain === culture.strain)
    .flatMap((each) => {
      const density = densityAt(snapshot, each, moment)
      return density && density.densityPerMl >= thinnestSourcePerMl ? [{ culture: each, ...density }] : []
    })
    .sort(
      (a, b) =>
        Number(b.culture.isBackup) - Number(a.culture.isBackup) ||
        b.densityPerMl - a.densityPerMl ||
        (a.culture.id < b.culture.id ? -1 : 1),
    )[0]
}

function litresToStart(input: {
  culture: SnapshotCulture
  source: { culture: SnapshotCulture; densityPerMl: number }
  startPerMl: number
}): number {
  const { culture, source, startPerMl } = input
  const wantedL = (startPerMl * culture.volumeL) / (source.densityPerMl * (1 - DEFAULT_SIEVING_LOSS))
  const mostL = mostOfSource * source.culture.volumeL
  return wantedL > mostL ? measurableLDown(mostL) : measurableL(wantedL)
}
