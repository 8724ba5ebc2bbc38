import { elapsedDays } from '../../calendar/elapsed.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { roundsInOrder } from '../../calendar/rounds.ts'
import { artemiaDiscardDefinition } from '../../definitions/live-food/artemia-discard.ts'
import { harvestDue } from '../../plans/artemia-hatch.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot } from '../../snapshot/room-snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

/** The last harvest of a hatch vessel, and when it was taken. */
export function lastHatch(snapshot: RoomSnapshot, id: string, day: HusbandryDay) {
  return factsUntil(snapshot, 'harvest', { subjectId: id, until: day.endsAt }).at(-1)
}

export const artemiaDiscard = defineRule(artemiaDiscardDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const harvest = lastHatch(snapshot, vessel.id, day)
    const discarded = lastCare(snapshot, 'discard', { subjectId: vessel.id, day })
    if (!harvest || (discarded && discarded.at > harvest.at)) return []
    // The next harvest empties the jar before it fills it.
    if (harvestDue(snapshot, vessel, day)) return []
    const oldAfterDays = parameters.coldHours / 24
    const round = roundsInOrder(day).find(({ startsAt }) => elapsedDays(harvest.at, startsAt) >= oldAfterDays)
    if (!round) return []
    return [
      {
        roundId: round.id,
        content: taskContent({
          verb: 'discard',
          title: titled('discard', { thing: 'what is left of the nauplii' }),
          steps: [phrase('Down the drain; scald or bleach the jar, rinse, dry.')],
          cautions: releaseCautions,
          because: [factLink(harvest, { label: 'harvested' }), parameter('coldHours', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'discard' } }] }),
})
