import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, profileLink } from '../../engine/rule.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { larvalDiet } from '../../state/larval-diet.ts'
import { isDoneInRound, ordinalText } from '../done.ts'
import { choiceField } from '../fields.ts'
import { days } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { spreadRounds } from '../rounds.ts'
import { textOf } from '../values.ts'
import { batchById } from './prey-count.ts'

export const larvalWean = defineRule({
  id: 'larval-wean',
  title: 'Offer dry food',
  sentence:
    'From the species’ weaning day offer dry food in {feedsPerDay} feeds a day beside the live food, until it is all they eat.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('two beside the live food; more for those who are there'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet || diet.day < diet.species.feeding.weaningFirstDay.value) return []
    const rounds = spreadRounds(day, parameters.feedsPerDay)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).filter(({ data }) => data.food === 'dry')
    const { weaningFirstDay, weaningLastDay } = diet.species.feeding
    return rounds
      .filter((round) => !isDoneInRound(fed, { day, rounds, round }))
      .map((round) => ({
        roundId: round.id,
        content: taskContent({
          verb: 'feed' as const,
          title: phrase(`A pinch of dry food${ordinalText(rounds.indexOf(round), rounds.length, 'feed')}`),
          steps: [
            phrase('Fine food, dusted on before the live food, while they are hungry.'),
            phrase('Watch whether they take it or spit it out. Siphon what sinks within the hour.'),
          ],
          fields: [
            choiceField({
              name: 'taken',
              label: 'Taken?',
              choices: [
                { value: 'none', label: 'hardly any' },
                { value: 'some', label: 'by some' },
                { value: 'all', label: 'by nearly all' },
              ],
            }),
          ],
          because: [
            profileLink(diet.species.id, weaningFirstDay.source.citation, {
              label: 'old at the first dry food',
              quantity: days(weaningFirstDay.value),
            }),
            profileLink(diet.species.id, weaningLastDay.source.citation, {
              label: 'old when dry food is all',
              quantity: days(weaningLastDay.value),
              joins: 'and',
            }),
            parameter('feedsPerDay', 'and'),
          ],
        }),
        context: {},
      }))
  },
  record: ({ values, subjectId }) => {
    const taken = textOf(values, 'taken')
    const note = taken && { none: 'Hardly any take it.', some: 'Some take it.', all: 'Nearly all take it.' }[taken]
    return { facts: [{ kind: 'feeding', subjectId, data: { food: 'dry', ...(note ? { note } : {}) } }] }
  },
})
