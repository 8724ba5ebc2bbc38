import { elapsedHours } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { hoursByLight } from '../calendar/light.ts'
import type { DayRound } from '../calendar/rounds.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { batchNumbers } from './batch-state.ts'
import { changedShare, eatenPerLarvaPerHour, grazingOf, preyCounts, preyFeedings } from './grazing.ts'
import { litRoom } from './tank-light.ts'

// A look tells of the water for a day; after that nobody knows. common practice
const longestHours = 24

/**
 * Artemia per mL likely left in a batch's water at a round: what was found at the last look and given since, less what these
 * larvae were seen to eat by light and by dark, and what left with changed water, that of the round itself too: it comes before the
 * feed. Null while no two looks say what they eat.
 */
export function artemiaLeft(
  snapshot: RoomSnapshot,
  { batch, tank, round, day }: { batch: SnapshotBatch; tank: SnapshotTank; round: DayRound; day: HusbandryDay },
): number | null {
  const about = { prey: 'artemia', until: round.startsAt } as const
  const last = preyCounts(snapshot, batch, about).at(-1)
  const larvae = batchNumbers(snapshot, batch).now
  const learned = grazingOf(snapshot, { batch, tank, ...about })
  if (!last || !learned || larvae === null) return null
  const { at } = last.fact
  const hours = elapsedHours(at, round.startsAt)
  if (hours <= 0 || hours > longestHours) return null
  const waterMl = tank.volumeL * 1000
  const given = preyFeedings(snapshot, batch, about)
    .filter((fed) => fed.at >= at)
    .reduce((sum, { data }) => sum + (data.animals ?? 0), 0)
  const byLight = hoursByLight(litRoom(snapshot, tank), { from: at, to: round.startsAt })
  const eaten = larvae * hours * eatenPerLarvaPerHour(learned, byLight)
  const left = last.perMl + (given - eaten) / waterMl
  return Math.max(0, left * (1 - Math.min(1, changedShare(snapshot, { batch, tank, from: at, to: day.endsAt }))))
}
