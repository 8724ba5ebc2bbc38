import type { foods } from '@fryward/shared'
import { z } from 'zod'
import { commonPractice, published } from '../../engine/parameters.ts'
import { defineRule, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotPair } from '../../snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound, ordinalText } from '../done.ts'
import { choiceField, choicesField, noteField } from '../fields.ts'
import { phrase, taskContent } from '../phrases.ts'
import { spreadRounds } from '../rounds.ts'
import { choiceOf, choicesOf, textOf } from '../values.ts'

/** The pair with this id; throws when the snapshot does not hold it. */
export function pairById(snapshot: RoomSnapshot, id: string): SnapshotPair {
  const pair = snapshot.pairs.find((each) => each.id === id)
  if (!pair) throw new Error(`The snapshot has no pair ${id}`)
  return pair
}

const pairFoods = ['frozen', 'dry', 'fresh'] as const satisfies readonly (typeof foods)[number][]
const pairSigns = ['not_eating', 'fighting', 'gasping', 'spots_or_wounds'] as const
const ContextSchema = z.object({ food: z.enum(pairFoods) })

export const pairFeed = defineRule({
  id: 'pair-feed',
  title: 'Feed the pairs',
  sentence:
    'Feed every pair in {feedsPerDay} feeds a day, as much as they clear in {minutes}; a resting pair in {restingFeedsPerDay} feeds. Frozen and dry food by turns: {varied}.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: published(
        '3-5 % of body weight a day in 2 feeds, black A. ocellaris: Raheem et al. c. 2021, Indian J. Fish.',
      ),
    },
    restingFeedsPerDay: {
      type: 'number',
      label: 'a day while resting',
      unit: 'feeds',
      default: 1,
      minimum: 1,
      maximum: 8,
      source: commonPractice(),
    },
    minutes: {
      type: 'number',
      label: 'until it is cleared',
      unit: 'minutes',
      default: 2,
      minimum: 1,
      maximum: 15,
      source: commonPractice(),
    },
    varied: { type: 'boolean', label: 'frozen and dry by turns', default: true, source: commonPractice() },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    const rounds = spreadRounds(day, pair.isResting ? parameters.restingFeedsPerDay : parameters.feedsPerDay)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: pair.id, day })
    return rounds
      .map((round, index) => ({ round, index }))
      .filter(({ round }) => !isDoneInRound(fed, { day, rounds, round }))
      .map(({ round, index }) => {
        const food: (typeof pairFoods)[number] = parameters.varied && index % 2 === 1 ? 'dry' : 'frozen'
        return {
          roundId: round.id,
          content: taskContent({
            verb: 'feed',
            title: phrase(`Feed ${food} food${ordinalText(index, rounds.length, 'feed')}`),
            steps: [
              phrase('A little at a time, as much as they clear in {minutes}.', {
                minutes: { value: parameters.minutes, unit: 'minutes' },
              }),
              ...(food === 'frozen' ? [phrase('Thaw it in tank water and pour the juice away.')] : []),
              phrase('Both eat? Look for torn fins, spots, hard breathing. Take out what is left.'),
            ],
            fields: [
              choiceField({
                name: 'food',
                label: 'Food given',
                choices: pairFoods.map((value) => ({ value, label: value })),
              }),
              choicesField({
                name: 'signs',
                label: 'Anything off?',
                choices: [
                  { value: 'not_eating', label: 'not eating' },
                  { value: 'fighting', label: 'fighting' },
                  { value: 'gasping', label: 'gasping' },
                  { value: 'spots_or_wounds', label: 'spots or wounds' },
                ],
              }),
              noteField(),
            ],
            because: [
              pair.isResting
                ? settingLink(pair.id, 'resting', { label: 'resting', text: 'yes' })
                : settingLink(pair.id, 'resting', { label: 'resting', text: 'no' }),
              parameter(pair.isResting ? 'restingFeedsPerDay' : 'feedsPerDay', 'and'),
              parameter('minutes', 'and'),
            ],
          }),
          context: { food },
        }
      })
  },
  record: ({ context, values, subjectId }) => {
    const food = choiceOf(values, 'food', pairFoods) ?? ContextSchema.parse(context).food
    const note = textOf(values, 'note')
    const signs = choicesOf(values, 'signs', pairSigns)
    return {
      facts: [
        { kind: 'feeding', subjectId, data: { food } },
        ...(signs.length > 0 || note
          ? [{ kind: 'observation', subjectId, data: { signs, ...(note ? { note } : {}) } } as const]
          : []),
      ],
    }
  },
})
