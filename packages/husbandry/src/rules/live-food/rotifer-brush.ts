import { defineRule } from '../../engine/rule.ts'
import { cultureById } from '../../state/culture-state.ts'
import { phrase, taskContent } from '../phrases.ts'
import { brushDue, rotiferBrushId, rotiferBrushParameters } from '../plans/brush-plan.ts'
import { isFedInFirstRound } from '../plans/rotifer-feed-plan.ts'
import { firstRound } from '../rounds.ts'
import { brushFact, brushLink, brushSteps } from './brush-parts.ts'

export const rotiferBrush = defineRule({
  id: rotiferBrushId,
  title: 'Brush the walls',
  sentence:
    'Brush the walls of every rotifer culture every {everyDays} days; on days with a first feed it is part of that.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: rotiferBrushParameters,
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
          title: phrase('Brush the walls'),
          steps: brushSteps(culture),
          because: [brushLink(culture, due, null), parameter('everyDays', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [brushFact(subjectId)] }),
})
