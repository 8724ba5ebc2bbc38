import { lastRound } from '../../calendar/rounds.ts'
import { clutchDarkDefinition } from '../../definitions/broodstock/clutch-dark.ts'
import { toRaise } from '../../plans/hatch-tank-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { chanceLinks, isNestPulled } from './hatch-night.ts'

export const clutchDark = defineRule(clutchDarkDefinition, {
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
          title: titled('keep_dark'),
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
