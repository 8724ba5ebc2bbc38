import { CYSTS_STOP_ABOVE_C, type HatchPlanNote } from '@fryward/live-feed'
import type { Because, Phrase, Quantity } from '@fryward/shared'
import { z } from 'zod'
import { laterOf } from '../../calendar/elapsed.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { artemiaStartDefinition, type CystKind, cystKinds } from '../../definitions/live-food/artemia-start.ts'
import { hatchUnderWay } from '../../plans/artemia-hatch.ts'
import { type ArtemiaStart, artemiaStarts } from '../../plans/artemia-starts.ts'
import type { CystYield } from '../../plans/cyst-yield.ts'
import { artemiaSooner } from '../../plans/sooner-artemia.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, planLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot } from '../../snapshot/room-snapshot.ts'
import { givenAmountField } from '../../task/fields.ts'
import {
  animals,
  degC,
  grams,
  hours,
  litres,
  measurableGUp,
  measurableL,
  psu,
  roundAnimals,
} from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

const ContextSchema = z.object({ cystsG: z.number(), volumeL: z.number(), feedDate: z.string() })

const noteWords: Record<HatchPlanNote, string> = {
  'slower-than-published-range': 'It is cooler than the published range: look from the planned hour on.',
  'warmer-than-best': 'It is warmer than is best; above {stop} they stop for good.',
  'enrichment-not-12-or-24-hours': 'Published enrichments last 12 or 24 hours.',
  'too-large-for-first-artemia': 'Enriched for a day they are too large for larvae of five days.',
  'several-vessels': 'That is more than one vessel holds: share it between several.',
}

const cystWords: Record<CystKind, string> = {
  dry_in_shells: 'dry cysts in their shells',
  dry_without_shells: 'dry shell-free cysts',
  drained_without_shells: 'shell-free cysts, drained',
}

const seenWords: Record<CystYield['by'], string> = {
  test: 'from a gram, by the tin’s own test',
  harvests: 'from a gram, as the last harvests were counted',
}

export const artemiaStart = defineRule(artemiaStartDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const kind = cystKinds.find((each) => each === parameters.cysts) ?? 'dry_in_shells'
    const isWet = kind === 'drained_without_shells'
    // Never into a vessel that is not harvested: the list asks for it once it is.
    if (hatchUnderWay(snapshot, vessel, day.endsAt)) return []
    return artemiaStarts(snapshot, day)
      .filter((start) => start.vessel.id === vessel.id)
      .map((start) => {
        const dryG = start.plan.cystsG
        const cystsG = measurableGUp(dryG * (isWet ? parameters.wetPerDry : 1))
        const amount = grams(cystsG)
        return {
          roundId: start.round.id,
          dueAt: laterOf(start.at, start.round.startsAt),
          content: taskContent({
            verb: 'start' as const,
            title: titled('give', {
              amount,
              thing: cystWords[kind],
              details: [{ kind: 'for_feeds_of', date: start.feedDate }],
            }),
            amount,
            amountOf: cystWords[kind],
            steps: startSteps(start, { amount, kind }),
            fields: [
              givenAmountField({
                name: 'cystsG',
                label: 'Cysts weighed',
                unit: 'g',
                planned: cystsG,
                maximum: Math.max(500, cystsG * 3),
                step: 0.1,
              }),
            ],
            because: [
              ...soonerLinks(snapshot, day),
              ...needLinks(start),
              parameter('spare', 'and'),
              start.seen
                ? factLink(start.seen.fact, {
                    label: seenWords[start.seen.by],
                    quantity: animals(roundAnimals(start.seen.naupliiPerGram)),
                    joins: 'divided_by' as const,
                  })
                : parameter('naupliiPerGram', 'divided_by'),
              ...(isWet ? [parameter('wetPerDry', 'times')] : []),
              ...hatchLinks(start, amount),
              parameter('enrichHours', 'and'),
              parameter('handlingHours', 'and'),
            ],
          }),
          context: { cystsG, volumeL: vessel.volumeL, feedDate: start.feedDate },
        }
      })
  },
  record: ({ context, values, subjectId }) => {
    const { cystsG: plannedG, volumeL, feedDate } = ContextSchema.parse(context)
    const cystsG = numberOf(values, 'cystsG') ?? plannedG
    const data = { act: 'start_artemia' as const, litres: volumeL, cystsG, forDate: feedDate }
    return { facts: [{ kind: 'care', subjectId, data }] }
  },
})

/** The whole vessel's water, at its own salinity and warmth. */
function startSteps(
  { vessel, plan, lateHours, isShortOfVessels }: ArtemiaStart,
  { amount, kind }: { amount: Quantity; kind: CystKind },
): Phrase[] {
  return [
    phrase('{water} of clean water at {salinity} and {temperature}; strong air from the bottom; light on it.', {
      water: litres(measurableL(vessel.volumeL)),
      salinity: psu(vessel.salinity),
      temperature: degC(vessel.temperatureC),
    }),
    kind === 'drained_without_shells'
      ? phrase('Rinse them on a sieve, drain for a minute, weigh {amount}, and put them in.', { amount })
      : phrase('Weigh {amount} dry, rinse them on a sieve, and put them in.', { amount }),
    phrase('They hatch in about {hours}.', { hours: hours(Number(plan.hatchHours.toFixed(1))) }),
    ...(lateHours > 0
      ? [
          phrase('They are out about {late} after the first feed of that day: what the jar still holds comes first.', {
            late: hours(Math.max(1, Math.round(lateHours))),
          }),
        ]
      : []),
    ...(isShortOfVessels
      ? [phrase('The hatch vessels cannot have them ready every morning at this warmth: one more vessel can.')]
      : []),
    ...plan.notes.map((note) =>
      phrase(noteWords[note], note === 'warmer-than-best' ? { stop: degC(CYSTS_STOP_ABOVE_C) } : {}),
    ),
  ]
}

/** Where the room ends rotifers early, and these are for what they leave. */
function soonerLinks(snapshot: RoomSnapshot, day: HusbandryDay): Because[] {
  const cure = artemiaSooner(snapshot, day)
  return cure ? [planLink(cure.fact.data.planMadeAt, { label: 'rotifers end early', joins: null })] : []
}

function needLinks({ needs, nauplii, feedDate }: ArtemiaStart): Because[] {
  return [
    ...needs.map((need) =>
      settingLink(need.of.id, 'feeds of Artemia', {
        label: `${need.of.name} on ${feedDate}${need.isAwaited ? ', if they are out by then' : ''}`,
        quantity: animals(roundAnimals(need.nauplii)),
        joins: 'plus',
      }),
    ),
    computedLink('feeds of the day', null, { label: 'wanted', quantity: animals(roundAnimals(nauplii)) }),
  ]
}

function hatchLinks({ vessel, plan }: ArtemiaStart, amount: Quantity): Because[] {
  return [
    computedLink('cysts for that many', 'Lavens, Thongrod & Sorgeloos 2000, ch. 6 (Blackwell)', {
      label: 'cysts, to what a scale shows',
      quantity: amount,
    }),
    settingLink(vessel.id, 'temperature', {
      label: 'where it hatches',
      quantity: degC(vessel.temperatureC),
      joins: 'and',
    }),
    computedLink(
      'hatching time by temperature',
      'about 24 h at 28 °C, longer when cooler: general literature (from memory)',
      { label: 'to hatch', quantity: hours(Number(plan.hatchHours.toFixed(1))), joins: 'and' },
    ),
  ]
}
