import { addDays, type HusbandryDay, husbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotClutch } from '../../snapshot.ts'
import { type ClutchOutlook, clutchOutlook } from '../../state/clutch-outlook.ts'

export const morningAfterId = 'clutch-morning-after'

/** Parameters of the morning after; here because the day's look gives way to it. */
export const morningAfterParameters = {
  fromChance: {
    type: 'number',
    label: 'chance or more',
    unit: 'share',
    default: 0.1,
    minimum: 0.01,
    maximum: 0.9,
    source: commonPractice('one night in ten is worth a look at dawn'),
  },
} satisfies Parameters

export type NightBefore = { hatchedOn: string; outlook: ClutchOutlook }

/** Last night, when a clutch may have hatched in it; null when that was too unlikely to ask, or is not to be asked. */
export function nightBefore(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): NightBefore | null {
  const rule = { id: morningAfterId, isOnByDefault: true, parameters: morningAfterParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  const hatchedOn = addDays(day.date, -1)
  const night = husbandryDay({ room: snapshot.room, date: hatchedOn })
  if (!isOn || clutch.spawnedAt >= night.startsAt) return null
  const outlook = clutchOutlook(snapshot, clutch, night)
  return outlook.tonight < parameters.fromChance ? null : { hatchedOn, outlook }
}
