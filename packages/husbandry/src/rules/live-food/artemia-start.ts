import { artemiaHatchPlan, type HatchPlan, type HatchPlanNote } from '@fryward/live-feed'
import type { Because, Phrase, PlainDate } from '@fryward/shared'
import { z } from 'zod'
import { addMinutes } from '../../calendar/elapsed.ts'
import { addDays, type HusbandryDay, husbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound, roundBefore } from '../../calendar/rounds.ts'
import { artemiaStartDefinition } from '../../definitions/live-food/artemia-start.ts'
import { type ArtemiaNeed, artemiaNeeds } from '../../plans/artemia-need.ts'
import { hatchVessel } from '../../plans/hatch-vessel.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { givenAmountField } from '../../task/fields.ts'
import {
  animals,
  degC,
  grams,
  hours,
  litres,
  measurableG,
  measurableL,
  psu,
  roundAnimals,
} from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

const ContextSchema = z.object({ cystsG: z.number(), volumeL: z.number(), feedDate: z.string() })
// Hatching is known from 15 to 33 C (live-feed artemiaHatchPlan).
const hatchC = { from: 15, to: 33 }
// The longest hatch and enrichment together are under three days.
const mostDaysAhead = 3

const noteWords: Record<HatchPlanNote, string> = {
  'slower-than-published-range': 'It is cooler than the published range: look from the planned hour on.',
  'warmer-than-best': 'It is warmer than is best; above 33 C they stop for good.',
  'enrichment-not-12-or-24-hours': 'Published enrichments last 12 or 24 hours.',
  'too-large-for-first-artemia': 'Enriched for a day they are too large for larvae of five days.',
  'several-vessels': 'That is more than one vessel holds: share it between several.',
}

export type HatchToStart = { plan: HatchPlan; feedDate: PlainDate; needs: ArtemiaNeed[]; nauplii: number }

export const artemiaStart = defineRule(artemiaStartDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const start = hatchToStart(snapshot, { vessel, day, parameters })
    if (!start) return []
    const started = factsOnDay(snapshot, 'care', { subjectId: vessel.id, day }).some(
      ({ data }) => data.act === 'start_artemia',
    )
    if (started) return []
    const { plan, feedDate } = start
    const cystsG = Math.max(0.1, measurableG(plan.cystsG))
    const amount = grams(cystsG)
    return [
      {
        roundId: roundBefore(day, addMinutes(plan.startAt, 1)).id,
        content: taskContent({
          verb: 'start',
          title: titled('give', {
            amount,
            thing: 'shell-free cysts',
            details: [{ kind: 'for_feeds_of', date: feedDate }],
          }),
          amount,
          amountOf: 'shell-free cysts',
          steps: startSteps(vessel, { plan, cystsG }),
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
            ...needLinks(start),
            parameter('naupliiPerGram', 'divided_by'),
            ...hatchLinks(vessel, { plan, cystsG }),
            parameter('enrichHours', 'and'),
          ],
        }),
        context: { cystsG, volumeL: vessel.volumeL, feedDate },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const planned = ContextSchema.parse(context)
    const cystsG = numberOf(values, 'cystsG') ?? planned.cystsG
    const note = `${cystsG} g of cysts for ${planned.feedDate}`
    return { facts: [{ kind: 'care', subjectId, data: { act: 'start_artemia', litres: planned.volumeL, note } }] }
  },
})

/** The hatch that has to be started in this vessel on this day, or null. */
function hatchToStart(
  snapshot: RoomSnapshot,
  input: {
    vessel: SnapshotCulture
    day: HusbandryDay
    parameters: { naupliiPerGram: number; enrichHours: number; handlingHours: number }
  },
): HatchToStart | null {
  const { vessel, day, parameters } = input
  if (vessel.temperatureC < hatchC.from || vessel.temperatureC > hatchC.to) return null
  for (let ahead = 1; ahead <= mostDaysAhead; ahead += 1) {
    const feedDate = addDays(day.date, ahead)
    if (hatchVessel(snapshot, feedDate)?.id !== vessel.id) continue
    const feedDay = husbandryDay({ room: snapshot.room, date: feedDate })
    const needs = artemiaNeeds(snapshot, feedDay)
    const nauplii = needs.reduce((sum, need) => sum + need.nauplii, 0)
    if (nauplii <= 0) continue
    const plan = artemiaHatchPlan({
      neededAt: firstRound(feedDay).startsAt,
      nauplii,
      temperatureC: vessel.temperatureC,
      ...parameters,
      vesselL: vessel.volumeL,
    })
    if (plan.startAt >= day.startsAt && plan.startAt < day.endsAt) return { plan, feedDate, needs, nauplii }
  }
  return null
}

type Weighed = { plan: HatchPlan; cystsG: number }

function startSteps(vessel: SnapshotCulture, { plan, cystsG }: Weighed): Phrase[] {
  return [
    phrase(`{water} of clean water at {salinity} and {temperature}; strong air from the bottom; light on it.`, {
      water: litres(measurableL(Math.min(vessel.volumeL, plan.vesselL))),
      salinity: psu(vessel.salinity),
      temperature: degC(vessel.temperatureC),
    }),
    phrase('Weigh {amount} and rinse them in.', { amount: grams(cystsG) }),
    phrase('They hatch in about {hours}.', { hours: hours(Number(plan.hatchHours.toFixed(1))) }),
    ...plan.notes.map((note) => phrase(noteWords[note])),
  ]
}

function needLinks({ needs, nauplii, feedDate }: HatchToStart): Because[] {
  return [
    ...needs.map((need) =>
      settingLink(need.batch.id, 'feeds of Artemia', {
        label: `${need.batch.name} on ${feedDate}`,
        quantity: animals(roundAnimals(need.nauplii)),
        joins: 'plus',
      }),
    ),
    computedLink('feeds of the day', null, { label: 'wanted', quantity: animals(roundAnimals(nauplii)) }),
  ]
}

function hatchLinks(vessel: SnapshotCulture, { plan, cystsG }: Weighed): Because[] {
  return [
    computedLink('cysts for that many', 'Lavens, Thongrod & Sorgeloos 2000, ch. 6 (Blackwell)', {
      label: 'cysts, to what a scale shows',
      quantity: grams(cystsG),
    }),
    settingLink(vessel.id, 'temperature', {
      label: 'where it hatches',
      quantity: degC(vessel.temperatureC),
      joins: 'and',
    }),
    computedLink(
      'hatching time by temperature',
      'about 24 h at 28 C, longer when cooler: general literature (from memory)',
      { label: 'to hatch', quantity: hours(Number(plan.hatchHours.toFixed(1))), joins: 'and' },
    ),
  ]
}
