import { concentrateRation, type RationAdjustment, rationAdjustment } from '@fryward/live-feed'
import type { Because } from '@fryward/shared'
import { z } from 'zod'
import { addMinutes, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, published } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, Gap, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotConcentrate, SnapshotCulture } from '../../snapshot.ts'
import { cultureById, densityAt } from '../../state/culture-state.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { healthFrom, signFacts, signsField, waterField, waterLookOf } from '../culture-signs.ts'
import { isDoneInRound, ordinalText } from '../done.ts'
import { givenAmountField } from '../fields.ts'
import { measuredDose } from '../measured-dose.ts'
import { feeds, mL, share } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { spreadRounds } from '../rounds.ts'
import { numberOf } from '../values.ts'

// What was seen of the water counts for three days of feeds; older looks were at another density. common practice
const looksCountMinutes = 3 * 24 * 60

const ContextSchema = z.object({ concentrateId: z.string(), plannedMl: z.number(), dilution: z.number() })

export const rotiferFeed = defineRule({
  id: 'rotifer-feed',
  title: 'Feed the rotifers',
  sentence:
    'Feed every rotifer culture {cellsPerRotiferPerDay} cells a rotifer a day of its concentrate, in {feedsPerDay} feeds; follow the look of the water: {followsWater}.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    cellsPerRotiferPerDay: {
      type: 'number',
      label: 'for a full ration',
      unit: 'cells_per_rotifer_per_day',
      default: 75_000,
      minimum: 10_000,
      maximum: 250_000,
      source: published('Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243'),
    },
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('two feeds a day or more'),
    },
    followsWater: {
      type: 'boolean',
      label: 'less when still green, more when clear and sound',
      default: true,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const rounds = spreadRounds(day, parameters.feedsPerDay)
    const asked = rounds.filter((round) => round.startsAt >= culture.startedAt)
    if (asked.length === 0) return []
    const concentrate = concentrateOf(snapshot, culture)
    const feedings = factsOnDay(snapshot, 'feeding', { subjectId: culture.id, day })
    const adjustment = parameters.followsWater ? adjustmentFor(snapshot, culture, day) : null
    return asked
      .filter((round) => !isDoneInRound(feedings, { day, rounds, round }))
      .flatMap((round) => {
        const density = densityAt(snapshot, culture, { at: round.startsAt, until: day.endsAt })
        if (!density) throw new Gap(`Count ${culture.name}, or say how dense it was started, and its feeds follow.`)
        // Nothing alive in it: a look, not food, is what it needs.
        if (density.densityPerMl <= 0) return []
        const ration = concentrateRation({
          rotifersPerMl: density.densityPerMl,
          volumeL: culture.volumeL,
          cellsPerRotiferPerDay: parameters.cellsPerRotiferPerDay,
          concentrateCellsPerMl: concentrate.cellsPerMl,
          feedsPerDay: rounds.length,
          adjustment: adjustment?.factor ?? 1,
        })
        const dose = measuredDose(ration.mlPerFeed)
        const which = ordinalText(rounds.indexOf(round), rounds.length, 'feed')
        const because: Because[] = [
          ...density.because,
          settingLink(culture.id, 'volume', {
            label: 'in it',
            quantity: { value: culture.volumeL, unit: 'L' },
            joins: 'times',
          }),
          parameter('cellsPerRotiferPerDay', 'times'),
          ...(adjustment?.because ?? []),
          settingLink(null, `label of ${concentrate.name}`, {
            label: `in ${concentrate.name}`,
            quantity: { value: concentrate.cellsPerMl, unit: 'cells_per_mL' },
            joins: 'divided_by',
          }),
          rounds.length === parameters.feedsPerDay
            ? parameter('feedsPerDay', 'divided_by')
            : settingLink(null, 'rounds of the room', {
                label: 'that the rounds allow',
                quantity: feeds(rounds.length),
                joins: 'divided_by',
              }),
          computedLink('ration by cells', 'Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243', {
            label: `a feed, to what a syringe shows${dose.dilution > 1 ? `, diluted 1 in ${dose.dilution}` : ''}`,
            quantity: mL(dose.amountMl),
          }),
        ]
        const isDiluted = dose.dilution > 1
        const what = isDiluted ? `${concentrate.name} diluted 1 in ${dose.dilution}` : 'concentrate'
        return [
          {
            roundId: round.id,
            content: taskContent({
              verb: 'feed',
              title: phrase(`{amount} ${what}${which}`, { amount: mL(dose.amountMl) }),
              amount: mL(dose.amountMl),
              amountOf: isDiluted ? what : concentrate.name,
              steps: [
                phrase('Look at the water first: green, tinted or clear; smell it; see how they swim.'),
                phrase(`Shake ${concentrate.name} gently and put it back in the cold at once.`),
                ...(isDiluted
                  ? [
                      phrase(
                        `Stir 1 mL of it into ${dose.dilution - 1} mL of culture water: that is 1 in ${dose.dilution}.`,
                      ),
                    ]
                  : []),
                phrase(`Stir {amount} into a cup of culture water and pour it in near the air.`, {
                  amount: mL(dose.amountMl),
                }),
                phrase('A feed that was missed stays missed: never give two at once.'),
              ],
              fields: [
                waterField,
                signsField,
                givenAmountField({
                  name: 'amountMl',
                  label: `Given, ${isDiluted ? 'diluted' : 'concentrate'}`,
                  unit: 'mL',
                  planned: dose.amountMl,
                  maximum: Math.max(10, dose.amountMl * 10),
                  step: 0.1,
                }),
              ],
              because,
            }),
            context: { concentrateId: concentrate.id, plannedMl: dose.amountMl, dilution: dose.dilution },
          },
        ]
      })
  },
  record: ({ context, values, subjectId }) => {
    const { concentrateId, plannedMl, dilution } = ContextSchema.parse(context)
    const amountMl = (numberOf(values, 'amountMl') ?? plannedMl) / dilution
    return {
      facts: [
        { kind: 'feeding', subjectId, data: { food: 'concentrate', concentrateId, amountMl } },
        ...signFacts(subjectId, values),
      ],
    }
  },
})

function concentrateOf(snapshot: RoomSnapshot, culture: SnapshotCulture): SnapshotConcentrate {
  const concentrate = snapshot.concentrates.find(({ id }) => id === culture.concentrateId)
  if (!concentrate) throw new Gap(`Say which concentrate feeds ${culture.name} and its strength from the label.`)
  return concentrate
}

/** The ration's factor after the looks of the last days, each a step from the one before. */
function adjustmentFor(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): { factor: number; because: Because[] } | null {
  const since = addMinutes(day.startsAt, -looksCountMinutes)
  const looks = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt }).filter(
    (fact) => fact.at >= since,
  )
  let last: { step: RationAdjustment; because: Because } | null = null
  for (const fact of looks) {
    const water = waterLookOf(fact)
    if (!water) continue
    const isCultureSound = healthFrom(looks.filter(({ at }) => at <= fact.at)).grade === 'sound'
    const step = rationAdjustment({ waterAtNextFeed: water, isCultureSound, previous: last?.step.factor ?? 1 })
    const label = `water ${water}${step.reason === 'clear-but-unsound' ? ', but the culture is not sound' : ''}`
    last = { step, because: factLink(fact, { label, quantity: share(step.factor), joins: 'times' }) }
  }
  if (!last || last.step.factor === 1) return null
  return { factor: last.step.factor, because: [last.because] }
}
