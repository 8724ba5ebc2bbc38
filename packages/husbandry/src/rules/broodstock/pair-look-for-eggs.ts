import { z } from 'zod'
import { middleRound } from '../../calendar/rounds.ts'
import { pairLookForEggsDefinition } from '../../definitions/broodstock/pair-look-for-eggs.ts'
import { eggLookDue } from '../../plans/egg-look-plan.ts'
import { collectingRound, dusksOf } from '../../plans/floating-eggs.ts'
import { eggLookFeed } from '../../plans/pair-feed-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { pairById } from '../../snapshot/by-id.ts'
import { taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import {
  eggLookFields,
  eggLookLinks,
  eggLookOutcome,
  eggLookSteps,
  LaidAtSchema,
  laidAtNoon,
} from './egg-look-parts.ts'

// Tasks that were kept before eggs were stamped by day did not say.
const ContextSchema = z.object({
  laidAt: LaidAtSchema.nullable().default(null),
  isFloating: z.boolean().default(false),
})

export const pairLookForEggs = defineRule(pairLookForEggsDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    const look = eggLookDue(snapshot, pair, day)
    // Whoever feeds them stands before the nest: that feed asks.
    if (!look || eggLookFeed(snapshot, pair, day)) return []
    const isFloating = look.species.care.value === 'pelagic'
    return [
      {
        roundId: (isFloating ? collectingRound(snapshot, pair, day) : middleRound(day)).id,
        content: taskContent({
          verb: 'look',
          title: titled('look_for', { thing: 'eggs' }),
          steps: eggLookSteps(look),
          fields: eggLookFields(look),
          because: [...eggLookLinks(look), parameter('everyDays', 'and')],
        }),
        context: {
          laidAt: isFloating ? dusksOf(snapshot, pair, day) : laidAtNoon(snapshot.room, day.date),
          isFloating,
        },
      },
    ]
  },
  record: ({ context, values, doneAt, subjectId }) =>
    eggLookOutcome(subjectId, { values, doneAt, ...ContextSchema.parse(context) }),
})
