import { saltToMixG } from '@fryward/seawater'
import type { Id } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import type { RoomSnapshot } from '../../snapshot.ts'
import { harvestPlan } from './harvest-plan.ts'

export type WaterNeed = {
  subjectId: Id
  name: string
  purpose: string
  litres: number
  salinity: number
  temperatureC: number
}

// Where sea water’s density is known (EOS-80 as @fryward/seawater takes it).
const mixable = { salinity: { from: 0, to: 42 }, temperatureC: { from: -2, to: 40 } }

/** Every litre of new water that a day will ask for, by where it goes. */
export function waterNeeds(snapshot: RoomSnapshot, day: HusbandryDay): WaterNeed[] {
  return cultureNeeds(snapshot, day)
    .filter(({ litres }) => litres > 0)
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.subjectId < b.subjectId ? -1 : 1))
}

function cultureNeeds(snapshot: RoomSnapshot, day: HusbandryDay): WaterNeed[] {
  return snapshot.cultures.map((culture) => ({
    subjectId: culture.id,
    name: culture.name,
    purpose: 'refill after the harvest',
    litres: harvestPlan(snapshot, culture, day).litres,
    salinity: culture.salinity,
    temperatureC: culture.temperatureC,
  }))
}

/** Salt mix for so much water, g; null where it cannot be worked out (saltier than 42). */
function saltFor({ litres, salinity, temperatureC }: WaterNeed, dryShare: number): number | null {
  if (salinity < mixable.salinity.from || salinity > mixable.salinity.to) return null
  return saltToMixG({ volumeL: litres, salinity, temperatureC, dryShare })
}

export type WaterGroup = { salinity: number; litres: number; saltG: number | null; needs: WaterNeed[] }

/** Needs that one mix serves: the same salinity; freshest first. */
export function waterGroups(needs: readonly WaterNeed[], { dryShare }: { dryShare: number }): WaterGroup[] {
  const bySalinity = new Map<number, WaterNeed[]>()
  for (const need of needs) bySalinity.set(need.salinity, [...(bySalinity.get(need.salinity) ?? []), need])
  return [...bySalinity]
    .sort(([a], [b]) => a - b)
    .map(([salinity, same]) => {
      const salts = same.map((need) => saltFor(need, dryShare))
      return {
        salinity,
        litres: same.reduce((sum, need) => sum + need.litres, 0),
        saltG: salts.includes(null) ? null : salts.reduce<number>((sum, salt) => sum + (salt ?? 0), 0),
        needs: same,
      }
    })
}
