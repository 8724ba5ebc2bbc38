import type { Sign } from '@fryward/shared'
import { daysBetween, localDate } from '../../calendar/husbandry-day.ts'
import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, factLink, settingLink } from '../../engine/rule.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { larvalDiet } from '../../state/larval-diet.ts'
import { choiceField, noteField, numberField } from '../fields.ts'
import { phrase, taskContent } from '../phrases.ts'
import { middleRound } from '../rounds.ts'
import { numberOf, textOf } from '../values.ts'
import { batchById } from './prey-count.ts'

// Bars appear and larvae settle: Roux et al. 2019, Dev. Dyn. 248:545-568 (from memory).
export const larvalLook = defineRule({
  id: 'larval-look',
  title: 'Look at the larvae',
  sentence: 'Look at every batch every {everyDays} days: bellies, swimming, bars, bent backs.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next',
      unit: 'days',
      default: 2,
      minimum: 1,
      maximum: 14,
      source: commonPractice('every other day; whoever feeds and siphons sees them daily'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < 0) return []
    const last = factsUntil(snapshot, 'observation', { subjectId: batch.id, until: day.endsAt }).at(-1)
    if (last && elapsedDates(last.at, day.date, snapshot.room.timeZone) < parameters.everyDays) return []
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase(`Look at the larvae, day ${diet.day}`),
          steps: [
            phrase('A cup of them against the light: full bellies are round and silvery or green.'),
            phrase('Schooling into the current, or lying, spinning, gulping at the surface?'),
            phrase('Bars showing, settling on walls and bottom? Bent backs, short gill covers?'),
          ],
          fields: [
            choiceField({
              name: 'seen',
              label: 'They are',
              isRequired: true,
              choices: [
                { value: 'well', label: 'well' },
                { value: 'hungry', label: 'hungry or thin' },
                { value: 'poorly', label: 'poorly' },
              ],
            }),
            choiceField({
              name: 'settled',
              label: 'Barred and settled',
              choices: [
                { value: 'none', label: 'none' },
                { value: 'some', label: 'some' },
                { value: 'most', label: 'most' },
              ],
            }),
            numberField({
              name: 'deformed',
              label: 'Deformed ones seen',
              unit: 'animals',
              minimum: 0,
              maximum: 10_000,
              likely: [0, 30],
              usual: 0,
            }),
            noteField(),
          ],
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            ...(last ? [factLink(last, { label: 'last looked at', joins: 'and' as const })] : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const seen = textOf(values, 'seen')
    const settled = textOf(values, 'settled')
    const deformed = Math.round(numberOf(values, 'deformed') ?? 0)
    const note = [
      seen === 'hungry' ? 'Hungry or thin.' : seen === 'poorly' ? 'Poorly.' : '',
      settled === 'some' ? 'Some barred and settled.' : '',
      deformed > 0 ? `${deformed} deformed.` : '',
      textOf(values, 'note') ?? '',
    ]
      .filter(Boolean)
      .join(' ')
    const signs: Sign[] = seen === 'well' ? ['all_well'] : seen === 'hungry' ? ['not_eating'] : []
    if (settled === 'most') signs.push('settled')
    return {
      facts: [
        { kind: 'observation', subjectId, data: { signs, note: note || (seen === 'well' ? 'Well.' : 'Looked at.') } },
      ],
    }
  },
})

const elapsedDates = (at: string, date: string, timeZone: string): number =>
  daysBetween(localDate({ timeZone, at }), date)
