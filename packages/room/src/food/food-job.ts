import { type Fact, localDate, type RoomSnapshot } from '@fryward/husbandry'
import type { Read } from '../frame/read-in-room.ts'
import type { FoodJob } from './answer-food.ts'
import { crashRecord } from './crash-record.ts'
import { livedRecord } from './lived-record.ts'

/** Three weeks: a clutch of today hatches and is past its rotifers within them. */
const days = 21
const futures = 300

/** A room's food today, as a value of its own that may go to another thread. */
export async function foodJob({ tx, ctx, roomId, state }: Read): Promise<{ job: FoodJob; revision: number }> {
  const { snapshot, revision } = await state()
  const { timeZone } = snapshot.room
  const record = {
    ...(await crashRecord(tx, { roomId, now: ctx.now })),
    lived: await livedRecord(tx, { roomId, timeZone }),
  }
  const today = localDate({ timeZone, at: ctx.now })
  return { job: { snapshot: ofFood(snapshot), asked: { horizon: { today, days, futures }, record } }, revision }
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
