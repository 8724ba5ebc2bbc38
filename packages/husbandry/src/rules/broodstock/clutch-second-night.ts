import type { CareKind } from '@fryward/shared'
import { z } from 'zod'
import { addDays } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { clutchSecondNightDefinition } from '../../definitions/broodstock/clutch-second-night.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { clutchById } from '../../snapshot/by-id.ts'
import { findSpecies, isBrooder } from '../../species/index.ts'
import { clutchEggs, clutchIntent } from '../../state/clutch-state.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { numberField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

/** What becomes of what is left. common practice */
const lastStep: Record<CareKind, string> = {
  nest: 'Take the nest out now: what is left will foul the water.',
  mouth: 'Leave a parent that still carries in peace: it releases the rest by itself.',
  pouch: 'Leave a parent that still carries in peace: it releases the rest by itself.',
  pelagic: 'Siphon off what is left: it will foul the water.',
}

const SecondContextSchema = z.object({ hatchedOn: z.string(), batchId: z.string().nullable() })

export const clutchSecondNight = defineRule(clutchSecondNightDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const clutch = clutchById(snapshot, subject.id)
    const hatches = factsUntil(snapshot, 'hatch', { subjectId: clutch.id, until: day.endsAt })
    const first = hatches[0]
    if (!first || clutchIntent(snapshot, clutch) === 'leave_with_parents') return []
    const lastNight = addDays(day.date, -1)
    const left = factsUntil(snapshot, 'observation', { subjectId: clutch.id, until: day.endsAt }).at(-1)
    if (!left?.data.signs.includes('eggs_seen')) return []
    const isWaiting = lastNight > first.data.hatchedOn && lastNight <= addDays(first.data.hatchedOn, parameters.nights)
    if (!isWaiting || hatches.some(({ data }) => data.hatchedOn === lastNight)) return []
    if (factsOnDay(snapshot, 'observation', { subjectId: clutch.id, day }).length > 0) return []
    const isCarried = isBrooder(clutch.care)
    const mostEggs =
      clutchEggs(snapshot, clutch) ?? findSpecies(clutch.species)?.clutchSize.value.to ?? mostOfUnknownKind
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'look',
          title: titled(isCarried ? 'what_released_second' : 'what_hatched_second'),
          steps: [
            phrase(`${isCarried ? 'Young' : 'Larvae'} that came tonight join the others in the same tank.`),
            phrase(lastStep[clutch.care]),
          ],
          fields: [
            numberField({
              name: 'larvae',
              label: isCarried ? 'Young of the second night' : 'Larvae of the second night',
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              likely: [0, Math.max(50, mostEggs)],
              step: mostEggs < 100 ? 1 : 10,
            }),
          ],
          because: [
            factLink(first, {
              label: isCarried ? 'came the night of' : 'hatched the night of',
              text: first.data.hatchedOn,
            }),
            factLink(left, { label: isCarried ? 'still carrying' : 'eggs left', joins: 'and' }),
            parameter('nights', 'and'),
            settingLink(clutch.id, 'intent', {
              label: 'to be raised',
              text: clutchIntent(snapshot, clutch).replaceAll('_', ' '),
              joins: 'and',
            }),
          ],
        }),
        context: { hatchedOn: lastNight, batchId: first.data.batchId ?? null },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { hatchedOn, batchId } = SecondContextSchema.parse(context)
    const larvae = Math.round(numberOf(values, 'larvae') ?? 0)
    const gone: FactDraft = { kind: 'observation', subjectId, data: { signs: ['no_eggs'] } }
    if (larvae === 0) return { facts: [gone] }
    const data = { hatchedOn, larvae, ...(batchId === null ? {} : { batchId }) }
    return { facts: [{ kind: 'hatch', subjectId, data }, gone] }
  },
})

// Of a species that is not known here, not counted: a few hundred eggs. common practice
const mostOfUnknownKind = 500
