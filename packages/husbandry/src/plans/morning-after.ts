import { addDays, type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import { clutchMorningAfterDefinition } from '../definitions/broodstock/clutch-morning-after.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { type ClutchOutlook, clutchOutlook } from '../state/clutch-outlook.ts'
import { nightSeenOut } from '../state/seen-out.ts'

export type NightBefore = { hatchedOn: string; outlook: ClutchOutlook }

/**
 * Last night, when a clutch may have hatched in it, or the night in which it was seen to be out; null when it was too unlikely
 * to ask, or is not to be asked.
 */
export function nightBefore(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): NightBefore | null {
  const { isOn, parameters } = ruleInForce(snapshot, clutchMorningAfterDefinition)
  const seenOut = nightSeenOut(snapshot, clutch, day)
  if (isOn && seenOut !== null && seenOut < day.date)
    return {
      hatchedOn: seenOut,
      outlook: clutchOutlook(snapshot, clutch, husbandryDay({ room: snapshot.room, date: seenOut })),
    }
  const hatchedOn = addDays(day.date, -1)
  const night = husbandryDay({ room: snapshot.room, date: hatchedOn })
  if (!isOn || clutch.spawnedAt >= night.startsAt) return null
  const outlook = clutchOutlook(snapshot, clutch, night)
  return outlook.tonight < parameters.fromChance ? null : { hatchedOn, outlook }
}
