import { z } from 'zod'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { concentrateShakeDefinition } from '../../definitions/microalgae/concentrate-shake.ts'
import { concentrateUseByDefinition } from '../../definitions/microalgae/concentrate-use-by.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { days } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { periodicCare } from '../parts/periodic-care.ts'
import { bottlesStanding } from './bottle-use.ts'

export const concentrateShake = periodicCare(concentrateShakeDefinition, {
  verb: 'shake',
  act: 'shake_bottle',
  round: 'first',
  applies: ({ snapshot, day }) => {
    const standing = bottlesStanding(snapshot, day)
    if (standing.length === 0) return null
    const names = standing.map(({ name }) => name).sort((a, b) => a.localeCompare(b, 'en'))
    return {
      title: titled('turn_over', { thing: names.join(', ') }),
      steps: [
        phrase('Gently, ten times; do not beat air into it. Smell it: sour or sulphur means discard.'),
        phrase('In the refrigerator, near {cold}, never frozen.', { cold: { value: 4, unit: 'degC' } }),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})

const ContextSchema = z.object({ note: z.string() })

export const concentrateUseBy = defineRule(concentrateUseByDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const said = factsUntil(snapshot, 'care', { subjectId: subject.id, until: day.endsAt }).filter(
      ({ data }) => data.act === 'discard',
    )
    return [...snapshot.concentrates]
      .sort((a, b) => (a.id < b.id ? -1 : 1))
      .flatMap((bottle, index) => {
        const untilDate = bottle.useBy === null ? null : daysBetween(day.date, bottle.useBy)
        const openFor = bottle.openedOn === null ? null : daysBetween(bottle.openedOn, day.date)
        const isPast = (untilDate !== null && untilDate < 0) || (openFor !== null && openFor >= parameters.openDays)
        const isSoon = untilDate !== null && untilDate <= parameters.warnDays
        if (!isPast && !isSoon) return []
        const note = isPast ? `${bottle.name}: past its time` : `${bottle.name}: next one bought`
        // Said once for each of the two, until the bottle is marked as finished on its page.
        if (said.some(({ data }) => data.note === note)) return []
        return [
          {
            roundId: firstRound(day).id,
            ordinal: index + 1,
            content: taskContent({
              verb: isPast ? ('discard' as const) : ('check' as const),
              title:
                isPast || bottle.useBy === null
                  ? titled('discard', {
                      thing: bottle.name,
                      details: [{ kind: 'because', words: ['past its time'] }, also('open the next')],
                    })
                  : titled('use_up', { thing: bottle.name, details: [{ kind: 'use_by', date: bottle.useBy }] }),
              steps: [
                phrase('Mark it as finished, and enter the next one with the strength of its own label.'),
                phrase('A new strength changes every feed: look at the first one twice.'),
              ],
              because: [
                ...(bottle.useBy === null
                  ? []
                  : [
                      settingLink(null, `bottle ${bottle.name}`, {
                        label: 'use by',
                        text: bottle.useBy,
                        joins: 'and' as const,
                      }),
                    ]),
                ...(openFor === null
                  ? []
                  : [
                      settingLink(null, `bottle ${bottle.name}`, {
                        label: 'open',
                        quantity: days(openFor),
                        joins: 'and' as const,
                      }),
                    ]),
                parameter(isPast && !(untilDate !== null && untilDate < 0) ? 'openDays' : 'warnDays', 'and'),
              ],
            }),
            context: { note },
          },
        ]
      })
  },
  record: ({ context, subjectId }) => ({
    facts: [{ kind: 'care', subjectId, data: { act: 'discard', note: ContextSchema.parse(context).note } }],
  }),
})
