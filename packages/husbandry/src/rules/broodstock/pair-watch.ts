import { daysBetween } from '../../calendar/husbandry-day.ts'
import { lastRound, middleRound } from '../../calendar/rounds.ts'
import { pairConditioningDefinition } from '../../definitions/broodstock/pair-conditioning.ts'
import { pairWatchNewDefinition } from '../../definitions/broodstock/pair-watch-new.ts'
import { roomDayLengthDefinition } from '../../definitions/broodstock/room-day-length.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { pairById } from '../../snapshot/by-id.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isBrooding } from '../../state/pair-outlook.ts'
import { tankLight } from '../../state/tank-light.ts'
import { fishWaterCautions } from '../../task/cautions.ts'
import { choicesField, noteField } from '../../task/fields.ts'
import { hours } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choicesOf, textOf } from '../../task/values.ts'
import { periodicCare } from '../parts/periodic-care.ts'

const fightSigns = ['fighting', 'spots_or_wounds', 'not_eating', 'gasping'] as const

export const pairWatchNew = defineRule(pairWatchNewDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    if (pair.formedOn === null) return []
    const age = daysBetween(pair.formedOn, day.date)
    if (age < 0 || age >= parameters.days) return []
    const seen = factsOnDay(snapshot, 'observation', { subjectId: pair.id, day })
    if (seen.some(({ data }) => data.signs.some((sign) => sign === 'all_well' || sign === 'fighting'))) return []
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'look',
          title: titled('watch_for', { thing: 'fighting', details: [{ kind: 'day', day: age }] }),
          steps: [
            phrase(
              'Five quiet minutes: chasing and shaking are courtship, torn fins and a corner at the surface are not.',
            ),
            phrase('Part them at once when one no longer eats or cannot get away: a divider first.'),
          ],
          cautions: fishWaterCautions,
          fields: [
            choicesField({
              name: 'signs',
              label: 'Anything off?',
              choices: [
                { value: 'fighting', label: 'fighting' },
                { value: 'spots_or_wounds', label: 'wounds' },
                { value: 'not_eating', label: 'one does not eat' },
                { value: 'gasping', label: 'gasping' },
              ],
            }),
            noteField(),
          ],
          because: [
            settingLink(pair.id, 'formed on', { label: 'together since', text: pair.formedOn }),
            parameter('days', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const signs = choicesOf(values, 'signs', fightSigns)
    const note = textOf(values, 'note')
    const data = { signs: signs.length > 0 ? signs : (['all_well'] as const), ...(note ? { note } : {}) }
    return { facts: [{ kind: 'observation', subjectId, data: { ...data, signs: [...data.signs] } }] }
  },
})

export const pairConditioning = defineRule(pairConditioningDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    if (pair.isResting || isBrooding(snapshot, pair)) return []
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: pair.id, day })
    if (fed.some(({ data }) => data.food === 'fresh')) return []
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'feed',
          title: titled('feed', { thing: 'fresh food' }),
          steps: [phrase('Shrimp, clam or squid, rinsed and cut to their mouths; as much as they clear at once.')],
          because: [settingLink(pair.id, 'clutches', { label: 'not brooding' }), parameter('extraFeeds', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'feeding', subjectId, data: { food: 'fresh' } }] }),
})

export const roomDayLength = periodicCare(roomDayLengthDefinition, {
  verb: 'check',
  act: 'check_light',
  round: 'first',
  applies: ({ snapshot }) => {
    if (snapshot.pairs.length === 0) return null
    const { hours: lit, onAt, offAt } = tankLight(snapshot, undefined)
    const own = snapshot.tanks.filter(
      ({ id, lightHours }) => lightHours !== null && snapshot.pairs.some(({ tankId }) => tankId === id),
    )
    return {
      title: titled('check', { thing: 'the light timers', details: [{ kind: 'hours', from: onAt, to: offAt }] }),
      steps: [
        phrase('{hours} of light; watch a timer switch, or set it by the clock on the wall.', { hours: hoursOf(lit) }),
        ...own.map((tank) => {
          const { hours: ownHours, offAt: ownOffAt } = tankLight(snapshot, tank)
          return phrase(`${tank.name}: {hours}, until ${ownOffAt}.`, { hours: hoursOf(ownHours) })
        }),
        phrase('No light at night over a pair with eggs, not even from the next room.'),
      ],
      because: [settingLink(null, 'light hours', { label: 'light', text: `${onAt} to ${offAt}`, joins: 'and' })],
      daysWithout: Number.POSITIVE_INFINITY,
    }
  },
})

const hoursOf = (value: number) => hours(Number(value.toFixed(1)))
