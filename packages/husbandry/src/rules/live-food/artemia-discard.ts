import { COLD_STORE } from '@fryward/live-feed'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { elapsedDays } from '../../calendar/husbandry-day.ts'
import { published } from '../../engine/parameters.ts'
import { defineRule, factLink } from '../../engine/rule.ts'
import type { RoomSnapshot } from '../../snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { cultureById } from '../../state/culture-state.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { releaseCautions } from '../cautions.ts'
import { phrase, taskContent } from '../phrases.ts'
import { roundsInOrder } from '../rounds.ts'

/** The last harvest of a hatch vessel, and when it was taken. */
export function lastHatch(snapshot: RoomSnapshot, id: string, day: HusbandryDay) {
  return factsUntil(snapshot, 'harvest', { subjectId: id, until: day.endsAt }).at(-1)
}

export const artemiaDiscard = defineRule({
  id: 'artemia-discard',
  title: 'Discard old nauplii',
  sentence: 'Discard nauplii that have been in the cold for {coldHours}: they starve and are no food.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    coldHours: {
      type: 'number',
      label: 'in the cold at most',
      unit: 'hours',
      default: COLD_STORE.longestHours,
      minimum: 1,
      maximum: 48,
      source: published('under 10 C, up to 24 h: Ghent Univ. shrimp nutrition course, Artemia cold storage'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const harvest = lastHatch(snapshot, vessel.id, day)
    const discarded = lastCare(snapshot, 'discard', { subjectId: vessel.id, day })
    if (!harvest || (discarded && discarded.at > harvest.at)) return []
    const oldAfterDays = parameters.coldHours / 24
    const round = roundsInOrder(day).find(({ startsAt }) => elapsedDays(harvest.at, startsAt) >= oldAfterDays)
    if (!round) return []
    return [
      {
        roundId: round.id,
        content: taskContent({
          verb: 'discard',
          title: phrase('Discard what is left of the nauplii'),
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
