import { type CultureDay, crashHazard, cultureDaysAhead, expectedCultureDays, steadyHarvest } from '@fryward/live-feed'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { rotiferHarvestDefinition } from '../definitions/live-food/rotifer-harvest.ts'
import { isHeldBack } from '../plans/harvest-plan.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { doubtAbout } from '../state/culture-doubt.ts'
import { asTheDayBegan, type CultureOutlook, cultureOutlook } from '../state/culture-state.ts'
import { hasFallen } from '../state/culture-trend.ts'
import { dateOf, factsOnDay } from '../state/day-facts.ts'
import { crashDays, sharedCauses } from './crash-days.ts'
import type { CultureAhead, CultureStanding } from './culture-ahead.ts'
import { dayAhead, eachDay, type FoodHorizon } from './food-days.ts'
import { seedOf } from './seed-of.ts'

/** Crashes that the room has seen, over the days on which its cultures stood. */
export type CrashRecord = { crashes: number; cultureDays: number }

type Asked = { horizon: FoodHorizon; record: CrashRecord }

/**
 * What each rotifer culture of a room can give, day by day: as expected, and in seeded futures with the crashes that
 * cultures share. One that nobody has counted is named with nothing in it.
 */
export function suppliesAhead(snapshot: RoomSnapshot, { horizon, record }: Asked): CultureAhead[] {
  const today = dayAhead(snapshot, horizon, 0)
  const standing = snapshot.cultures.filter(({ kind, startedAt }) => kind === 'rotifer' && startedAt < today.endsAt)
  const crashes = crashDays({ cultures: standing, hazardPerDay: crashHazard(record), futures: horizon.futures })
  return standing.map((culture, index) =>
    cultureAhead(snapshot, culture, { today, horizon, crashes: crashes[index]!, all: standing }),
  )
}

type About = { today: HusbandryDay; horizon: FoodHorizon; crashes: readonly number[]; all: readonly SnapshotCulture[] }

function cultureAhead(snapshot: RoomSnapshot, culture: SnapshotCulture, about: About): CultureAhead {
  const { today, horizon, crashes, all } = about
  const { isOn, parameters } = ruleInForce(snapshot, rotiferHarvestDefinition)
  const ml = culture.volumeL * 1000
  const outlook = cultureOutlook(snapshot, culture, asTheDayBegan(snapshot, culture, today))
  const known = {
    ...{ id: culture.id, culture, name: culture.name, volumeL: culture.volumeL },
    ...{ floorAnimals: parameters.floorPerMl * ml * doubtOf(outlook), mostShare: parameters.mostShare },
    goneShare: goneElsewhere(snapshot, culture, today),
    sharesCausesWith: sharedCauses(culture, all),
  }
  if (!outlook) return { ...known, ...nothing(horizon), standing: 'not_counted' }
  const { estimate } = outlook
  const seed = seedOf(culture.id)
  const expected = expectedCultureDays({ estimate, days: horizon.days })
  const drawn = cultureDaysAhead({ estimate, days: horizon.days, seed, futures: horizon.futures })
  const held = steadyHarvest(estimate.parameters, { dilutionPerDay: estimate.dilutionPerDay, seed: 1 }).heldPerMl
  const isThinned = isOn && !culture.isBackup && !isHeldBack(snapshot, culture, today)
  const firstDay = firstDayOf({ snapshot, outlook, parameters, today })
  return {
    ...known,
    standing: standingOf(snapshot, culture, { today, outlook, firstDay }),
    animals: expected.densityPerMl * ml,
    growth: expected.days.map((day) => perVessel(day, ml)),
    thinnedToAnimals: isThinned ? Math.max(held, parameters.floorPerMl) * ml : null,
    firstDay,
    futures: drawn.map(({ densityPerMl, days }, future) => ({
      animals: densityPerMl * ml,
      growth: days.map((day, index) => (index + 1 > crashes[future]! ? crashed : perVessel(day, ml))),
    })),
  }
}

/** How much more than its floor a culture has to show, so that a miscount does not take it under (`shareAboveFloor`). */
const doubtOf = (outlook: CultureOutlook | null): number =>
  outlook ? outlook.estimate.densityPerMl / outlook.estimate.lower80PerMl : 1

/** What was taken today for other fish, for a new culture or down the drain; larvae's own parts are the plan's to give. */
function goneElsewhere(snapshot: RoomSnapshot, culture: SnapshotCulture, today: HusbandryDay): number {
  const parts = factsOnDay(snapshot, 'harvest', { subjectId: culture.id, day: today }).flatMap(({ data }) => data.parts)
  const goneL = parts.filter(({ to }) => to !== 'larval_batch').reduce((sum, { volumeL }) => sum + volumeL, 0)
  return Math.min(1, goneL / culture.volumeL)
}

const crashed: CultureDay = { gain: 0, crowding: 0 }
const perVessel = ({ gain, crowding }: CultureDay, ml: number): CultureDay => ({ gain, crowding: crowding / ml })

const nothing = (horizon: FoodHorizon) => {
  const growth = eachDay(horizon, () => crashed)
  const futures = Array.from({ length: horizon.futures }, () => ({ animals: 0, growth }))
  return { animals: 0, growth, thinnedToAnimals: null, firstDay: 0, futures }
}

function standingOf(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { today, outlook, firstDay }: { today: HusbandryDay; outlook: CultureOutlook; firstDay: number },
): CultureStanding {
  if (doubtAbout(snapshot, culture, today)) return 'in_doubt'
  if (hasFallen(outlook.record, culture)) return 'falling'
  if (culture.isBackup) return 'backup'
  return firstDay > 0 ? 'too_young' : 'gives'
}

type FirstDayAsked = {
  snapshot: RoomSnapshot
  outlook: CultureOutlook
  parameters: { firstHarvestAgeDays: number; firstHarvestPerMl: number }
  today: HusbandryDay
}

/** Days until a first harvest by age and by the density that it is expected to reach; 0 for one that has given before. */
function firstDayOf({ snapshot, outlook, parameters, today }: FirstDayAsked): number {
  const { record, estimate } = outlook
  if (record.removals.some(({ fact }) => fact.kind === 'harvest')) return 0
  const byAge = parameters.firstHarvestAgeDays - daysBetween(dateOf(snapshot, record.startedAt), today.date)
  let densityPerMl = estimate.densityPerMl
  let byDensity = 0
  for (const { gain, crowding } of expectedCultureDays({ estimate, days: longestWaitDays }).days) {
    // A culture that never gets so dense is left out of the plan for as long as it is looked at.
    if (densityPerMl >= parameters.firstHarvestPerMl) break
    densityPerMl = (gain * densityPerMl) / (1 + crowding * densityPerMl)
    byDensity += 1
  }
  return Math.max(0, byAge, byDensity)
}

const longestWaitDays = 42
