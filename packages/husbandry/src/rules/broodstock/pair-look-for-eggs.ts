import { careKinds } from '@fryward/shared'
import { z } from 'zod'
import { addMinutes, daysBetween } from '../../calendar/husbandry-day.ts'
import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, Gap, settingLink } from '../../engine/rule.ts'
import { findSpecies } from '../../species/index.ts'
import { dateOf, daysSince, factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { isBrooding, pairOutlook } from '../../state/pair-outlook.ts'
import { choiceField, numberField, yesNoField } from '../fields.ts'
import { phrase, taskContent } from '../phrases.ts'
import { middleRound } from '../rounds.ts'
import { isYes, numberOf, textOf } from '../values.ts'
import { pairById } from './pair-feed.ts'

const ContextSchema = z.object({ care: z.enum(careKinds) })
const minutesOfDay = 24 * 60

export const pairLookForEggs = defineRule({
  id: 'pair-look-for-eggs',
  title: 'Look for eggs',
  sentence:
    'Look for eggs every day in a pair’s window, by its own intervals; outside the window, or before its first spawning, every {everyDays} days. Not while it has eggs or rests.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next, outside the window',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 30,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    if (pair.isResting || isBrooding(snapshot, pair)) return []
    if (pair.formedOn !== null && pair.formedOn > day.date) return []
    const about = { subjectId: pair.id, day }
    const looks = factsUntil(snapshot, 'observation', { subjectId: pair.id, until: day.endsAt }).filter(({ data }) =>
      data.signs.some((sign) => sign === 'eggs_seen' || sign === 'no_eggs'),
    )
    if (factsOnDay(snapshot, 'observation', about).some((fact) => looks.includes(fact))) return []
    const species = findSpecies(pair.species)
    if (!species) throw new Gap(`${pair.name}: no profile of ${pair.species} says how often it spawns.`)
    const outlook = pairOutlook(snapshot, pair, day)
    const window = outlook?.forecast.window80
    // Once its window is open it stays open until eggs are found: a late pair is looked at all the same.
    const isInWindow = window !== undefined && day.date >= window.from
    const sinceLook = daysSince(snapshot, looks.at(-1), day.date)
    if (!isInWindow && sinceLook !== null && sinceLook < parameters.everyDays) return []
    // A clutch found and lost or moved on one day is not looked for again on it.
    if (outlook && daysBetween(dateOf(snapshot, outlook.last.at), day.date) < 1) return []
    const care = species.care.value
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase('Look for eggs'),
          steps: [
            phrase(lookAt(care, pair.nestSite)),
            ...(window
              ? [
                  phrase(
                    `Next spawning likeliest ${outlook.forecast.likeliest.date}, between ${window.from} and ${window.to}.`,
                  ),
                ]
              : []),
            phrase('No hands in the tank: a torch and a minute of watching do.'),
          ],
          fields: [
            yesNoField({ name: 'eggs', label: care === 'nest' ? 'Eggs?' : 'Carrying eggs?', isRequired: true }),
            choiceField({
              name: 'laid',
              label: 'Laid',
              help: 'Today when left empty.',
              choices: [
                { value: 'today', label: 'today' },
                { value: 'yesterday', label: 'yesterday' },
              ],
            }),
            numberField({
              name: 'number',
              label: 'About how many',
              unit: 'eggs',
              minimum: 1,
              maximum: 20_000,
              likely: [Math.max(1, species.clutchSize.value.from * 0.1), species.clutchSize.value.to * 2],
              usual: Math.round((species.clutchSize.value.from + species.clutchSize.value.to) / 2),
              step: 10,
            }),
          ],
          because: [
            ...(outlook?.because ?? [
              settingLink(pair.id, 'clutches', { label: 'spawnings here so far', text: 'none' }),
            ]),
            parameter('everyDays', 'and'),
          ],
        }),
        context: { care },
      },
    ]
  },
  record: ({ context, values, doneAt, subjectId }) => {
    ContextSchema.parse(context)
    if (!isYes(values, 'eggs')) return { facts: [{ kind: 'observation', subjectId, data: { signs: ['no_eggs'] } }] }
    const spawnedAt = textOf(values, 'laid') === 'yesterday' ? addMinutes(doneAt, -minutesOfDay) : doneAt
    const eggs = numberOf(values, 'number')
    return {
      facts: [{ kind: 'observation', subjectId, data: { signs: ['eggs_seen'] } }],
      creations: [
        { kind: 'clutch', pairId: subjectId, spawnedAt, ...(eggs === undefined ? {} : { eggs: Math.round(eggs) }) },
      ],
    }
  },
})

function lookAt(care: (typeof careKinds)[number], nestSite: string): string {
  if (care === 'nest') return `Shine along the nest site${nestSite ? `: ${nestSite}` : ''}, and at what is near it.`
  if (care === 'mouth') return 'A full throat and a male that does not eat mean eggs in his mouth.'
  return 'A swollen, closed pouch means eggs.'
}
