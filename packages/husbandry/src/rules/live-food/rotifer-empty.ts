import type { Phrase, Quantity } from '@fryward/shared'
import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferEmptyDefinition } from '../../definitions/live-food/rotifer-empty.ts'
import { rotiferRescueDefinition } from '../../definitions/live-food/rotifer-rescue.ts'
import { type Rescue, rescueFor } from '../../plans/rescue-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { ruleInForce } from '../../rule/rule-in-force.ts'
import { settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { cultureStartedAt, standsEmpty } from '../../state/culture-history.ts'
import { cultureStartDate } from '../../state/culture-state.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { numberField } from '../../task/fields.ts'
import { animals, days, litres, perMl, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'
import { broughtOver, rescueLinks, takenField } from './rotifer-rescue.ts'

const ContextSchema = z.object({ plannedL: z.number(), sourceId: z.string().nullable(), animalsPerL: z.number() })
// What is sent comes from elsewhere and may bring something along. common practice
const apart = days(14)

export const rotiferEmpty = defineRule(rotiferEmptyDefinition, {
  draft: ({ snapshot, day, subject }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const isOfToday = cultureStartedAt(snapshot, culture, day.endsAt) >= day.startsAt
    if (isOfToday || !standsEmpty(snapshot, culture, day.endsAt)) return []
    const { startPerMl } = ruleInForce(snapshot, rotiferRescueDefinition).parameters
    const rescue = rescueFor(snapshot, culture, { day, startPerMl })
    const wanted = animals(roundAnimals(startPerMl * culture.volumeL * 1000))
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          ...(rescue ? fromAnother(rescue) : fromElsewhere(wanted)),
          cautions: releaseCautions,
          because: [
            settingLink(culture.id, 'restart', {
              label: 'begun again, and nothing put in',
              text: cultureStartDate(snapshot, culture, day.endsAt),
            }),
            settingLink(culture.id, 'volume', { label: 'in it', quantity: litres(culture.volumeL), joins: 'and' }),
            settingLink(culture.id, 'start', { label: 'to start with', quantity: perMl(startPerMl), joins: 'times' }),
            ...rescueLinks(rescue),
          ],
        }),
        context: {
          plannedL: rescue?.plannedL ?? 0,
          sourceId: rescue?.source.culture.id ?? null,
          animalsPerL: rescue?.animalsPerL ?? 0,
        },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, sourceId, animalsPerL } = ContextSchema.parse(context)
    if (sourceId !== null)
      return {
        facts: broughtOver(subjectId, { sourceId, animalsPerL, takenL: numberOf(values, 'amountL') ?? plannedL }),
      }
    const came = numberOf(values, 'animals')
    return {
      facts: came === undefined ? [] : [{ kind: 'inoculation', subjectId, data: { animals: Math.round(came) } }],
    }
  },
})

const fromAnother = (rescue: Rescue) => {
  const { culture } = rescue.source
  const amount = litres(rescue.plannedL)
  return {
    verb: 'restart' as const,
    title: titled('give_from', { amount, from: culture.name, details: [also('for a new start')] }),
    amount,
    amountOf: `${culture.name}, sieved`,
    steps: [
      phrase(`See to ${culture.name} first, and only then touch this vessel.`),
      phrase('Clean, with new water, matched, and air? Then put the sieved animals in.'),
      countedStep,
    ],
    fields: [takenField(rescue)],
  }
}

const countedStep = phrase('Do animals swim in it already? Count them, and this goes from the list.')

const elsewhereSteps: Phrase[] = [
  phrase('Nothing in the room can start it: the chilled reserve, another breeder, or a starter that is sent.'),
  phrase('When they come: a drop under the lens, warmth and salinity matched, sieved and rinsed, then in.'),
  phrase('Keep their tools apart for {apart}: what comes from elsewhere may bring something along.', { apart }),
  phrase('None yet? Sign it off without a number, and it is asked again tomorrow.'),
  countedStep,
]

const fromElsewhere = (wanted: Quantity) => ({
  verb: 'check' as const,
  title: titled('order', { amount: wanted, thing: 'live rotifers: it stands empty' }),
  amount: wanted,
  amountOf: 'live rotifers',
  steps: elsewhereSteps,
  fields: [
    numberField({
      ...{ name: 'animals', label: 'Put in, alive', help: 'Leave empty while none have come.', unit: 'animals' },
      ...{ minimum: 1000, maximum: 1e10, likely: [wanted.value / 10, wanted.value * 10], step: 1000 },
    }),
  ],
})
