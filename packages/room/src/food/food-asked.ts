import { type Fact, localDate, type RoomRecord, type RoomSnapshot } from '@fryward/husbandry'
import type { Instant } from '@fryward/shared'
import type { FoodJob } from './answer-food.ts'

/** Three weeks: a clutch of today hatches and is past its rotifers within them. */
const days = 21
const futures = 300

/** What is asked about a room's food at a moment: a value of its own that may go to another thread. */
export function foodAsked(snapshot: RoomSnapshot, { now, record }: { now: Instant; record: RoomRecord }): FoodJob {
  const today = localDate({ timeZone: snapshot.room.timeZone, at: now })
  return { snapshot: ofFood(snapshot), asked: { horizon: { today, days, futures }, record } }
}

/** What the question reads of a room; what else happens there leaves the answer as it is. */
function ofFood(snapshot: RoomSnapshot): RoomSnapshot {
  const { room, concentrates, feedLinks, ruleSettings, tanks, cultures, pairs, clutches, batches } = snapshot
  const houses = new Set([...pairs, ...clutches].map(({ tankId }) => tankId))
  const about = new Set([...cultures, ...pairs, ...clutches, ...batches].map(({ id }) => id))
  const isAbout = ({ subjectId, kind }: Fact) =>
    about.has(subjectId) ||
    kind === 'cure' ||
    ((kind === 'water_test' || kind === 'water_reading') && houses.has(subjectId))
  return {
    ...{
      room,
      tanks,
      cultures,
      concentrates,
      pairs,
      clutches,
      batches,
      groups: [],
      feedLinks,
      foodPlan: null,
      ruleSettings,
    },
    facts: snapshot.facts.filter(isAbout),
  }
}
