import { defineRule } from '../../engine/rule.ts'
import { phrase, taskContent } from '../phrases.ts'
import { eggLookDue, lookForEggsId, lookForEggsParameters } from '../plans/egg-look-plan.ts'
import { eggLookFeed } from '../plans/pair-feed-plan.ts'
import { middleRound } from '../rounds.ts'
import { eggLookFields, eggLookLinks, eggLookOutcome, eggLookSteps } from './egg-look-parts.ts'
import { pairById } from './pair-feed.ts'

export const pairLookForEggs = defineRule({
  id: lookForEggsId,
  title: 'Look for eggs',
  sentence:
    'Look for eggs every day in a pair’s window, by its own intervals; outside the window, or before its first spawning, every {everyDays} days. Not while it has eggs or rests. With the day’s last feed in the light it is part of that.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: lookForEggsParameters,
  draft: ({ snapshot, day, subject, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    const look = eggLookDue(snapshot, pair, day)
    // Whoever feeds them stands before the nest: that feed asks.
    if (!look || eggLookFeed(snapshot, pair, day)) return []
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase('Look for eggs'),
          steps: eggLookSteps(look),
          fields: eggLookFields(look),
          because: [...eggLookLinks(look), parameter('everyDays', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, doneAt, subjectId }) => eggLookOutcome(subjectId, { values, doneAt }),
})
