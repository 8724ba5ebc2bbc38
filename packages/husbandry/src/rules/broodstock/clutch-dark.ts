import { published } from '../../engine/parameters.ts'
import { defineRule } from '../../engine/rule.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { phrase, taskContent } from '../phrases.ts'
import { lastRound } from '../rounds.ts'
import { chanceLinks, isNestPulled, toRaise } from './hatch-night.ts'

export const clutchDark = defineRule({
  id: 'clutch-dark',
  title: 'Make it dark',
  sentence:
    'On a night that is at least {fromChance} likely, or while a nest is pulled, make it wholly dark and keep it so.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'chance or more',
      unit: 'share',
      default: 0.2,
      minimum: 0.02,
      maximum: 0.95,
      source: published(
        'no clutch hatched under light at night: Fobert, Burke da Silva & Swearer 2019, Biol. Lett. 15(7) 20190272',
      ),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (found?.clutch.care !== 'nest') return []
    const { clutch, outlook } = found
    const isPulled = isNestPulled(snapshot, clutch, day)
    if (outlook.tonight < parameters.fromChance && !isPulled) return []
    if (factsOnDay(snapshot, 'care', { subjectId: clutch.id, day }).some(({ data }) => data.act === 'darken')) return []
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'check',
          title: phrase('Keep it dark from lights off'),
          steps: [
            phrase('Cover the tank on all sides; tape over every light of plugs, pumps and heaters.'),
            phrase('From lights off nobody puts a lamp on in the room; a dim red one if you must.'),
          ],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'darken' } }] }),
})
