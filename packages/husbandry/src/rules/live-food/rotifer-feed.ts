import { concentrateRation, type RationAdjustment, rationAdjustment } from '@fryward/live-feed'
import type { Because, Phrase } from '@fryward/shared'
import { z } from 'zod'
import { addHours } from '../../calendar/elapsed.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { type DayRound, firstRound } from '../../calendar/rounds.ts'
import { rotiferFeedDefinition } from '../../definitions/live-food/rotifer-feed.ts'
import type { FactOf } from '../../facts/fact.ts'
import { type Brushing, brushDue } from '../../plans/brush-plan.ts'
import { wrongWater } from '../../plans/culture-water-plan.ts'
import { concentrateOf, type FeedRounds, isFedInFirstRound, rotiferFeedRounds } from '../../plans/rotifer-feed-plan.ts'
import { Gap } from '../../rule/gap.ts'
import type { ParameterValues } from '../../rule/parameters.ts'
import { defineRule, type RuleDraft } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotConcentrate, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { doubtAbout } from '../../state/culture-doubt.ts'
import { type CultureDensity, densityAt } from '../../state/culture-state.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { feedsADayLink } from '../../task/feeds-a-day.ts'
import { givenAmountField } from '../../task/fields.ts'
import { type MeasuredDose, measuredDose } from '../../task/measured-dose.ts'
import { mL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled, whichFeed } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'
import { healthFrom, signFacts, signsField, waterField, waterLookOf } from '../parts/culture-signs.ts'
import { brushedField, brushFact, brushLink, brushSteps } from './brush-parts.ts'

// What was seen of the water counts for three days of feeds; older looks were at another density. common practice
const looksCountHours = 72

const ContextSchema = z.object({
  concentrateId: z.string(),
  plannedMl: z.number(),
  dilution: z.number(),
  /** Tasks that were kept before the walls were brushed with the feed did not say. */
  brushes: z.boolean().default(false),
})
type FeedParameter = (name: keyof typeof rotiferFeedDefinition.parameters & string, joins?: Because['joins']) => Because
type Adjustment = { factor: number; because: Because[] } | null

export const rotiferFeed = defineRule(rotiferFeedDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const feedRounds = rotiferFeedRounds(snapshot, culture, { day, ...parameters })
    if (feedRounds.begun.length === 0) return []
    const concentrate = concentrateOf(snapshot, culture)
    if (!concentrate) throw new Gap(`Say which concentrate feeds ${culture.name} and its strength from the label.`)
    const doubt = doubtAbout(snapshot, culture, day) ?? wrongWater(snapshot, culture, day)?.fact
    const byWater = parameters.followsWater ? adjustmentFor(snapshot, culture, day) : null
    const adjustment = doubt ? halved(byWater, doubt) : byWater
    const brushing = isFedInFirstRound(snapshot, culture, day) ? brushDue(snapshot, culture, day) : null
    return feedRounds.asked.flatMap((round) => {
      const density = densityAt(snapshot, culture, { at: round.startsAt, until: day.endsAt })
      if (!density) throw new Gap(`Count ${culture.name}, or say how dense it was started, and its feeds follow.`)
      // Nothing alive in it: a look, not food, is what it needs.
      if (density.densityPerMl <= 0) return []
      const isFirst = round.id === firstRound(day).id
      const feed = { culture, concentrate, round, feedRounds, density, adjustment, brushing: isFirst ? brushing : null }
      return [feedDraft(feed, { parameters, parameter })]
    })
  },
  record: ({ context, values, subjectId }) => {
    const { concentrateId, plannedMl, dilution, brushes } = ContextSchema.parse(context)
    const amountMl = (numberOf(values, 'amountMl') ?? plannedMl) / dilution
    return {
      facts: [
        { kind: 'feeding', subjectId, data: { food: 'concentrate', concentrateId, amountMl } },
        ...signFacts(subjectId, values),
        ...(brushes && values.brushed !== false ? [brushFact(subjectId)] : []),
      ],
    }
  },
})

type Feed = {
  culture: SnapshotCulture
  concentrate: SnapshotConcentrate
  round: DayRound
  feedRounds: FeedRounds
  density: CultureDensity
  adjustment: Adjustment
  /** The walls to brush with this feed; null when they are not due, or it is a later one. */
  brushing: Brushing | null
}

function feedDraft(
  feed: Feed,
  given: { parameters: ParameterValues<typeof rotiferFeedDefinition.parameters>; parameter: FeedParameter },
): RuleDraft<z.input<typeof ContextSchema>> {
  const { culture, concentrate, round, feedRounds, brushing } = feed
  const ration = concentrateRation({
    rotifersPerMl: feed.density.densityPerMl,
    volumeL: culture.volumeL,
    cellsPerRotiferPerDay: given.parameters.cellsPerRotiferPerDay,
    concentrateCellsPerMl: concentrate.cellsPerMl,
    feedsPerDay: feedRounds.rounds.length,
    adjustment: feed.adjustment?.factor ?? 1,
  })
  const dose = measuredDose(ration.mlPerFeed)
  const amount = mL(dose.amountMl)
  const isDiluted = dose.dilution > 1
  const what = isDiluted ? `${concentrate.name} diluted 1 in ${dose.dilution}` : 'concentrate'
  const index = feedRounds.rounds.findIndex(({ id }) => id === round.id)
  const which = index < 0 ? [also('first feed now')] : whichFeed(index, feedRounds.rounds.length)
  return {
    roundId: round.id,
    content: taskContent({
      verb: 'feed',
      title: titled('give', { amount, thing: what, details: [...which, ...(brushing ? [also('walls brushed')] : [])] }),
      amount,
      amountOf: isDiluted ? what : concentrate.name,
      steps: [
        phrase('Look at the water first: green, tinted or clear; smell it; see how they swim.'),
        ...(brushing ? brushSteps(culture) : []),
        ...doseSteps(concentrate, dose),
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
        ...(brushing ? [brushedField] : []),
      ],
      because: becauseOf(feed, { dose, ...given }),
    }),
    context: {
      concentrateId: concentrate.id,
      plannedMl: dose.amountMl,
      dilution: dose.dilution,
      brushes: brushing !== null,
    },
  }
}

function doseSteps(concentrate: SnapshotConcentrate, { amountMl, dilution }: MeasuredDose): Phrase[] {
  return [
    phrase(`Shake ${concentrate.name} gently and put it back in the cold at once.`),
    ...(dilution > 1
      ? [phrase(`Stir 1 mL of it into ${dilution - 1} mL of culture water: that is 1 in ${dilution}.`)]
      : []),
    phrase(`Stir {amount} into a cup of culture water and pour it in near the air.`, { amount: mL(amountMl) }),
    phrase('A feed that was missed stays missed: never give two at once.'),
  ]
}

function becauseOf(
  { culture, concentrate, feedRounds, density, adjustment, brushing }: Feed,
  given: {
    dose: MeasuredDose
    parameters: ParameterValues<typeof rotiferFeedDefinition.parameters>
    parameter: FeedParameter
  },
): Because[] {
  const { dose, parameters, parameter } = given
  const { rounds, isBackup } = feedRounds
  const perDay = isBackup ? 'backupFeedsPerDay' : 'feedsPerDay'
  return [
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
    feedsADayLink({ feeds: rounds.length, wanted: parameters[perDay], parameter: parameter(perDay, 'divided_by') }),
    computedLink('ration by cells', 'Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243', {
      label: `a feed, to what a syringe shows${dose.dilution > 1 ? `, diluted 1 in ${dose.dilution}` : ''}`,
      quantity: mL(dose.amountMl),
    }),
    ...(brushing ? [brushLink(culture, brushing, 'and')] : []),
  ]
}

// What it does not clear fouls the water of a culture that is not well. common practice
const shareInDoubt = 0.5

/** No more than half a ration while it smells, sinks or swims slowly or its water is wrong, however clear that is. */
function halved(byWater: Adjustment, doubt: FactOf<'observation'> | FactOf<'water_test'>): Adjustment {
  if (byWater && byWater.factor <= shareInDoubt) return byWater
  const label =
    doubt.kind === 'observation'
      ? `it was in doubt: ${doubt.data.signs.join(', ').replaceAll('_', ' ')}`
      : 'its water was found wrong'
  return {
    factor: shareInDoubt,
    because: [factLink(doubt, { label, quantity: share(shareInDoubt), joins: 'times' })],
  }
}

/** The ration's factor after the looks of the last days, each a step from the one before. */
function adjustmentFor(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Adjustment {
  const since = addHours(day.startsAt, -looksCountHours)
  const looks = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt }).filter(
    (fact) => fact.at >= since,
  )
  let last: { step: RationAdjustment; because: Because } | null = null
  for (const fact of looks) {
    const water = waterLookOf(fact)
    if (!water) continue
    const isCultureSound = healthFrom(looks.filter(({ at }) => at <= fact.at)).grade === 'sound'
    const step = rationAdjustment({ waterAtNextFeed: water, isCultureSound, previous: last?.step.factor ?? 1 })
    const label = `how the water has looked, last ${water}${step.reason === 'clear-but-unsound' ? ', but the culture is not sound' : ''}`
    last = { step, because: factLink(fact, { label, quantity: share(step.factor), joins: 'times' }) }
  }
  if (!last || last.step.factor === 1) return null
  return { factor: last.step.factor, because: [last.because] }
}
