import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { copepodRestartDefinition } from '../definitions/copepods/copepod-restart.ts'
import { rotiferRestartDefinition } from '../definitions/live-food/rotifer-restart.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { cultureStarts } from '../state/culture-state.ts'
import { isLivedOn } from './copepod-plan.ts'

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
  const starts = cultureStarts(snapshot, culture.kind, day.endsAt)
  const place = starts.findIndex(({ id }) => id === culture.id)
  const ages = starts.map(({ startedOn }) => daysBetween(startedOn, day.date))
  if (ages[place]! < parameters.everyDays + putOffDays(snapshot, culture, day)) return null
  // Two young ones are no backup.
  const isYoung = (ageDays: number, at: number) => at !== place && ageDays >= 0 && ageDays < parameters.apartDays
  // Two that come due together are begun again one after the other: all that stand before this one are older, so due too.
  return place > 0 || ages.some(isYoung) ? null : { startedOn: starts[place]!.startedOn, ageDays: ages[place]! }
}

/** How much later a culture of copepods is moved: not while small larvae live on what it would halve. */
function putOffDays(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): number {
  if (culture.kind !== 'copepod' || !isLivedOn(snapshot, culture, day)) return 0
  return ruleInForce(snapshot, copepodRestartDefinition).parameters.putOffDays
}
