import type { Phrase } from '@fryward/shared'
import { z } from 'zod'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { microalgaeLookDefinition } from '../../definitions/microalgae/microalgae-look.ts'
import { microalgaeSplitDefinition } from '../../definitions/microalgae/microalgae-split.ts'
import { type AlgaeSplit, algaeSplit } from '../../plans/algae-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { cultureStartDate } from '../../state/culture-state.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { choiceField, givenAmountField, noteField } from '../../task/fields.ts'
import { litres, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'

export const microalgaeLook = defineRule(microalgaeLookDefinition, {
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
          title: titled('swirl'),
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
              : settingLink(culture.id, 'start', { label: 'not yet looked at' }),
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

const ContextSchema = z.object({
  plannedL: z.number(),
  /** Fed from it before; tasks that were kept before did not say. */
  drawnL: z.number().default(0),
  salinity: z.number(),
})

export const microalgaeSplit = defineRule(microalgaeSplitDefinition, {
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
          ...splitTitle(plan),
          steps: [
            ...drawnSteps(plan),
            phrase('Into clean bottles for feeding, chilled and dated; or into the larvae’s water today.'),
            phrase('New water boiled or bleached and neutralised, at {salinity}, cool, with its fertiliser.', {
              salinity: psu(culture.salinity),
            }),
            phrase('A pale culture is left alone: more light and time before it is split.'),
          ],
          fields: [
            givenAmountField({
              name: 'amountL',
              label: plan.drawnL > 0 ? 'New water put in' : 'Taken and put in',
              unit: 'L',
              planned: plan.filledL,
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
        context: { plannedL: plan.filledL, drawnL: plan.drawnL, salinity: culture.salinity },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, drawnL, salinity } = ContextSchema.parse(context)
    const addedL = numberOf(values, 'amountL') ?? plannedL
    const removedL = Number(Math.max(0, addedL - drawnL).toFixed(2))
    return { facts: [{ kind: 'water_change', subjectId, data: { removedL, addedL, salinity } }] }
  },
})

const splitTitle = ({ litres: takenL, drawnL, filledL }: AlgaeSplit) =>
  drawnL > 0
    ? {
        title: titled('fill', { amount: litres(filledL), thing: 'new water' }),
        amount: litres(filledL),
        amountOf: 'new water',
      }
    : { title: titled('replace', { amount: litres(takenL) }), amount: litres(takenL), amountOf: 'culture' }

/** What was fed from it is missing already. */
const drawnSteps = ({ litres: takenL, drawnL }: AlgaeSplit): Phrase[] =>
  drawnL > 0
    ? [
        phrase('{drawn} of it were fed since it was last full, and count as split off.', { drawn: litres(drawnL) }),
        takenL > 0
          ? phrase('Take {taken} more off, then fill it up to the mark.', { taken: litres(takenL) })
          : phrase('Take nothing more off: fill it up to the mark.'),
      ]
    : []
