import { saltToMixG } from '@fryward/seawater'
import type { Id } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { algaeSplit } from './algae-plan.ts'
import { artemiaStarts } from './artemia-starts.ts'
import { copepodChange, copepodHarvest } from './copepod-plan.ts'
import { harvestPlan } from './harvest-plan.ts'
import { tanksToReady } from './hatch-tank-plan.ts'
import { larvalChange } from './larval-change-plan.ts'
import { restartDue } from './restart-plan.ts'
import { tankChangesTomorrow } from './tank-change-plan.ts'

export type WaterNeed = {
  subjectId: Id
  name: string
  purpose: string
  litres: number
  salinity: number
  temperatureC: number
}

// As far as sea water’s density is known (EOS-80 as @fryward/seawater takes it).
const saltiestMixable = 42

/**
 * Every litre of new water that tomorrow will ask for, by where it goes. What the calendar asks for today already is
 * taken to be done today, and is not asked for again tomorrow.
 */
export function waterNeeds(snapshot: RoomSnapshot, days: { today: HusbandryDay; tomorrow: HusbandryDay }): WaterNeed[] {
  return [
    ...cultureNeeds(snapshot, days),
    ...batchNeeds(snapshot, days.tomorrow),
    ...tankNeeds(snapshot, days),
    ...hatchTankNeeds(snapshot, days),
  ]
    .filter(({ litres }) => litres > 0)
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.subjectId < b.subjectId ? -1 : 1))
}

type TwoDays = { today: HusbandryDay; tomorrow: HusbandryDay }

function cultureNeeds(snapshot: RoomSnapshot, { today, tomorrow }: TwoDays): WaterNeed[] {
  const servedToday = new Set(artemiaStarts(snapshot, today).map(({ feedDate }) => feedDate))
  const toStart = artemiaStarts(snapshot, tomorrow).filter(({ feedDate }) => !servedToday.has(feedDate))
  return snapshot.cultures.flatMap((culture) => {
    const isStarted = toStart.some(({ vessel }) => vessel.id === culture.id)
    return [
      ...cultureNeed(snapshot, culture, { today, tomorrow }),
      { ...inVessel(culture), purpose: 'water for the cysts', litres: isStarted ? culture.volumeL : 0 },
    ]
  })
}

const remembered = rememberedBySnapshot<WaterNeed[]>()

/** What one culture asks for by itself; a write about another leaves it as it is. */
const cultureNeed = (snapshot: RoomSnapshot, culture: SnapshotCulture, { today, tomorrow }: TwoDays): WaterNeed[] =>
  remembered(snapshot, `${culture.id} ${today.date} ${tomorrow.date}`, () => {
    const need = inVessel(culture)
    const split = algaeSplit(snapshot, culture, today) ? null : algaeSplit(snapshot, culture, tomorrow)
    const isBegunToday = restartDue(snapshot, culture, today) !== null
    const begun = isBegunToday ? null : restartDue(snapshot, culture, tomorrow)
    const siphoned = copepodChange(snapshot, culture, today) ? null : copepodChange(snapshot, culture, tomorrow)
    return [
      { ...need, purpose: 'refill after the harvest', litres: harvestPlan(snapshot, culture, tomorrow).litres },
      { ...need, purpose: 'fill up after the split', litres: split?.filledL ?? 0 },
      { ...need, purpose: 'new water for nauplii', litres: naupliiNextDayL(snapshot, culture, { today, tomorrow }) },
      { ...need, purpose: 'bottom siphoned', litres: siphoned?.litres ?? 0 },
      { ...need, purpose: 'a clean vessel filled for the restart', litres: begun ? culture.volumeL : 0 },
    ]
  })

/** A culture that feeds larvae is sieved again tomorrow; one that does not, only when it is not due today already. */
function naupliiNextDayL(snapshot: RoomSnapshot, culture: SnapshotCulture, { today, tomorrow }: TwoDays): number {
  const harvest = copepodHarvest(snapshot, culture, tomorrow)
  const isDoneToday = harvest?.eaters.length === 0 && copepodHarvest(snapshot, culture, today) !== null
  return isDoneToday ? 0 : (harvest?.litres ?? 0)
}

function batchNeeds(snapshot: RoomSnapshot, day: HusbandryDay): WaterNeed[] {
  return livingBatches(snapshot).flatMap((batch) => {
    const change = larvalChange(snapshot, batch, day)
    return change
      ? [{ ...inVessel(change.tank), name: batch.name, purpose: 'water change', litres: change.litres }]
      : []
  })
}

const tankNeeds = (snapshot: RoomSnapshot, days: TwoDays): WaterNeed[] =>
  tankChangesTomorrow(snapshot, days).map(({ tank, litres }) => ({
    ...inVessel(tank),
    purpose: 'water change',
    litres,
  }))

/** A tank that is to be ready for larvae tomorrow is filled then. */
const hatchTankNeeds = (snapshot: RoomSnapshot, days: TwoDays): WaterNeed[] =>
  tanksToReady(snapshot, days).map((tank) => ({
    ...inVessel(tank),
    purpose: 'filled for the larvae',
    litres: tank.volumeL,
  }))

function inVessel({ id, name, salinity, temperatureC }: SnapshotTank | SnapshotCulture) {
  return { subjectId: id, name, salinity, temperatureC }
}

/** Salt mix for so much water, g; null where it cannot be worked out (saltier than 42). */
function saltFor({ litres, salinity, temperatureC }: WaterNeed, dryShare: number): number | null {
  if (salinity > saltiestMixable) return null
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
