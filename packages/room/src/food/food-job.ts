import { type Fact, localDate, type RoomSnapshot } from '@fryward/husbandry'
import type { Instant } from '@fryward/shared'
import type { FoodJob } from './answer-food.ts'

/** Three weeks: a clutch of today hatches and is past its rotifers within them. */
const days = 21
const futures = 300
// The room's own crashes are not written down as such yet: what is published speaks alone.
const record = { crashes: 0, cultureDays: 0 }

/** A room's food today, as a value of its own that may go to another thread. */
export function foodJob(snapshot: RoomSnapshot, now: Instant): FoodJob {
  const today = localDate({ timeZone: snapshot.room.timeZone, at: now })
  return { snapshot: ofFood(snapshot), asked: { horizon: { today, days, futures }, record } }
}

/** What the question reads of a room; what else happens there leaves the answer as it is. */
function ofFood(snapshot: RoomSnapshot): RoomSnapshot {
  const { room, concentrates, feedLinks, ruleSettings, tanks, pairs, clutches, batches } = snapshot
  const cultures = snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
  const houses = new Set([...pairs, ...clutches].map(({ tankId }) => tankId))
  const about = new Set([...cultures, ...pairs, ...clutches, ...batches].map(({ id }) => id))
  const isAbout = ({ subjectId, kind }: Fact) =>
    about.has(subjectId) || (kind === 'water_test' && houses.has(subjectId))
  return {
    ...{ room, tanks, cultures, concentrates, pairs, clutches, batches, groups: [], feedLinks, ruleSettings },
    facts: snapshot.facts.filter(isAbout),
  }
}
