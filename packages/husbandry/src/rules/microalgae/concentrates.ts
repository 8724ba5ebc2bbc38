import { z } from 'zod'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { commonPractice, published } from '../../engine/parameters.ts'
import { defineRule, settingLink } from '../../engine/rule.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { days } from '../measures.ts'
import { periodicCare } from '../periodic-care.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import { bottlesStanding } from './bottle-use.ts'

export const concentrateShake = periodicCare({
  id: 'concentrate-shake',
  title: 'Shake the bottles',
  sentence:
    'Turn over every bottle of concentrate that nothing is fed from, every {everyDays} days, and keep it cold. A bottle in use is shaken with each feed.',
  subject: 'room',
  station: 'microalgae',
  verb: 'shake',
  act: 'shake_bottle',
  round: 'first',
  everyDays: { default: 1, source: commonPractice('cells settle and clump in a bottle that stands') },
  applies: ({ snapshot, day }) => {
    const standing = bottlesStanding(snapshot, day)
    if (standing.length === 0) return null
    const names = standing.map(({ name }) => name).sort((a, b) => a.localeCompare(b, 'en'))
    return {
      title: `Turn over ${names.join(', ')}`,
      steps: [
        phrase('Gently, ten times; do not beat air into it. Smell it: sour or sulphur means discard.'),
        phrase('In the refrigerator, near {cold}, never frozen.', { cold: { value: 4, unit: 'degC' } }),
      ],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})

const ContextSchema = z.object({ note: z.string() })

export const concentrateUseBy = defineRule({
  id: 'concentrate-use-by',
  title: 'Bottles past their time',
  sentence: 'Say so {warnDays} before a bottle’s use-by date, and when one has been open for {openDays}.',
  subject: 'room',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: {
    warnDays: {
      type: 'number',
      label: 'before its date',
      unit: 'days',
      default: 7,
      minimum: 0,
      maximum: 60,
      source: commonPractice('time to buy the next'),
    },
    openDays: {
      type: 'number',
      label: 'open',
      unit: 'days',
      default: 60,
      minimum: 7,
      maximum: 365,
      source: published(
        'as good as fresh after a month at 3 C (Yamasaki, Tanabe & Hirata 1989, Mem. Fac. Fish. Kagoshima Univ. 38:77-82); twice that, by practice',
      ),
    },
  },
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
              title: phrase(
                isPast
                  ? `${bottle.name} is past its time: discard it, open the next`
                  : untilDate === 0
                    ? `${bottle.name} is to be used by today: buy the next`
                    : `${bottle.name} is to be used by ${bottle.useBy}: buy the next`,
              ),
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
