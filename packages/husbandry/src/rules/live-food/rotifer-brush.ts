import { firstRound } from '../../calendar/rounds.ts'
import { rotiferBrushDefinition } from '../../definitions/live-food/rotifer-brush.ts'
import { brushDue } from '../../plans/brush-plan.ts'
import { isFedInFirstRound } from '../../plans/rotifer-feed-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { brushFact, brushLink, brushSteps } from './brush-parts.ts'

export const rotiferBrush = defineRule(rotiferBrushDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const due = brushDue(snapshot, culture, day)
    // Whoever feeds it stands before it with its brush: the first feed says so itself.
    if (!due || isFedInFirstRound(snapshot, culture, day)) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'brush',
          title: titled('brush', { thing: 'the walls' }),
          steps: brushSteps(culture),
          because: [brushLink(culture, due, null), parameter('everyDays', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [brushFact(subjectId)] }),
})
