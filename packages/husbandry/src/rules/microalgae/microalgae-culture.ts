import { z } from 'zod'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, factLink, settingLink } from '../../engine/rule.ts'
import { cultureById, cultureStartDate } from '../../state/culture-state.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { choiceField, givenAmountField, noteField } from '../fields.ts'
import { litres, psu } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { algaeSplit, algaeSplitId, algaeSplitParameters } from '../plans/algae-plan.ts'
import { firstRound } from '../rounds.ts'
import { numberOf, textOf } from '../values.ts'

export const microalgaeLook = defineRule({
  id: 'microalgae-look',
  title: 'Look at the microalgae',
  sentence:
    'Swirl every microalgae culture and look at its colour every {everyDays} days, before any animal’s water is touched.',
  subject: 'culture',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next',
      unit: 'days',
      default: 1,
      minimum: 1,
      maximum: 7,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'microalgae' || culture.startedAt >= day.endsAt) return []
    const last = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt }).at(-1)
    const since = daysSince(snapshot, last, day.date)
    if (since !== null && since < parameters.everyDays) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase('Swirl, look at the colour'),
          steps: [
            phrase('First of all on the round, with clean hands.'),
            phrase('Even and deeper than yesterday is well; flakes on the bottom, yellow or clear is not.'),
            phrase('A drop under the lens when in doubt: anything that swims does not belong in it.'),
          ],
          fields: [
            choiceField({
              name: 'colour',
              label: 'Colour',
              isRequired: true,
              choices: [
                { value: 'water_green', label: 'deep' },
                { value: 'water_tinted', label: 'pale' },
                { value: 'water_clear', label: 'clear, yellow or flaky' },
              ],
            }),
            noteField(),
          ],
          because: [
            last
              ? factLink(last, { label: 'last looked at' })
              : settingLink(culture.id, 'start', { label: 'looked at', text: 'not yet' }),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const colours = ['water_green', 'water_tinted', 'water_clear'] as const
    const colour = colours.find((each) => each === textOf(values, 'colour')) ?? 'water_tinted'
    const note = textOf(values, 'note')
    return { facts: [{ kind: 'observation', subjectId, data: { signs: [colour], ...(note ? { note } : {}) } }] }
  },
})

const ContextSchema = z.object({ plannedL: z.number(), salinity: z.number() })

export const microalgaeSplit = defineRule({
  id: algaeSplitId,
  title: 'Split the microalgae',
  sentence:
    'Every {everyDays} days take {share} of a microalgae culture that is not pale and fill it up with new, sterile, fertilised water.',
  subject: 'culture',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: algaeSplitParameters,
  draft: ({ snapshot, day, subject, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const plan = algaeSplit(snapshot, culture, day)
    if (!plan) return []
    const startedOn = cultureStartDate(snapshot, culture, day.endsAt)
    const last = factsUntil(snapshot, 'water_change', { subjectId: culture.id, until: day.endsAt }).at(-1)
    const ageDays = daysBetween(startedOn, day.date)
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'refill',
          title: phrase('{amount} out, as much new water in', { amount: litres(plan.litres) }),
          amount: litres(plan.litres),
          amountOf: 'culture',
          steps: [
            phrase('Into clean bottles for feeding, chilled and dated; or into the larvae’s water today.'),
            phrase('New water boiled or bleached and neutralised, at {salinity}, cool, with its fertiliser.', {
              salinity: psu(culture.salinity),
            }),
            phrase('A pale culture is left alone: more light and time before it is split.'),
          ],
          fields: [
            givenAmountField({
              name: 'amountL',
              label: 'Taken and put in',
              unit: 'L',
              planned: plan.litres,
              maximum: culture.volumeL,
              step: 0.1,
            }),
          ],
          because: [
            settingLink(culture.id, 'volume', { label: 'in it', quantity: litres(culture.volumeL) }),
            parameter('share', 'times'),
            parameter('everyDays', 'and'),
            last
              ? factLink(last, { label: 'last split', joins: 'and' })
              : settingLink(culture.id, 'start', {
                  label: `started ${ageDays} days ago`,
                  text: startedOn,
                  joins: 'and',
                }),
          ],
        }),
        context: { plannedL: plan.litres, salinity: culture.salinity },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, salinity } = ContextSchema.parse(context)
    const changedL = numberOf(values, 'amountL') ?? plannedL
    return {
      facts: [{ kind: 'water_change', subjectId, data: { removedL: changedL, addedL: changedL, salinity } }],
    }
  },
})
