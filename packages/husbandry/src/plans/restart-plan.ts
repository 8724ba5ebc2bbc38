import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { copepodRestartDefinition } from '../definitions/copepods/copepod-restart.ts'
import { rotiferRestartDefinition } from '../definitions/live-food/rotifer-restart.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { cultureStartDate, hasYoungNeighbour } from '../state/culture-state.ts'

export type Restart = { startedOn: string; ageDays: number }

const definitions = { rotifer: rotiferRestartDefinition, copepod: copepodRestartDefinition } as const

/**
 * The age at which a culture is to be begun again in a clean vessel that day; null while it is not due, or another was
 * begun again only just, or comes first: a restart may fail.
 */
export function restartDue(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Restart | null {
  if (culture.kind !== 'rotifer' && culture.kind !== 'copepod') return null
  const { isOn, parameters } = ruleInForce(snapshot, definitions[culture.kind])
  if (!isOn) return null
  const startedOn = cultureStartDate(snapshot, culture, day.endsAt)
  const ageDays = daysBetween(startedOn, day.date)
  if (ageDays < parameters.everyDays) return null
  if (hasYoungNeighbour(snapshot, culture, { day, withinDays: parameters.apartDays })) return null
  return isSecondInLine(snapshot, culture, { day, everyDays: parameters.everyDays }) ? null : { startedOn, ageDays }
}

/** Two that come due together are begun again one after the other, the older first. */
function isSecondInLine(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, everyDays }: { day: HusbandryDay; everyDays: number },
): boolean {
  const place = (each: SnapshotCulture) => `${cultureStartDate(snapshot, each, day.endsAt)} ${each.id}`
  return snapshot.cultures.some(
    (other) =>
      other.kind === culture.kind &&
      daysBetween(cultureStartDate(snapshot, other, day.endsAt), day.date) >= everyDays &&
      place(other) < place(culture),
  )
}
