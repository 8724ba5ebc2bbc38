import { type CultureDay, chilledReserve } from '@fryward/live-feed'
import type { FoodChange } from '@fryward/shared'
import { daysBetween } from '../calendar/husbandry-day.ts'
import { chilledPerL } from './chilled-ahead.ts'
import type { CultureAhead } from './culture-ahead.ts'
import { eachDay, type FoodHorizon } from './food-days.ts'

type Change<K extends FoodChange['kind']> = Extract<FoodChange, { kind: K }>

/** How old and how dense a room wants a culture before its first harvest. */
export type FirstHarvest = { firstHarvestAgeDays: number; firstHarvestPerMl: number }
type Asked = { changes: readonly FoodChange[]; horizon: FoodHorizon; first: FirstHarvest }

/** The supplies as they would be if these things were done or happened. */
export function changedSupplies(ahead: readonly CultureAhead[], { changes, horizon, first }: Asked): CultureAhead[] {
  let cultures = [...ahead]
  for (const change of changes) {
    if (change.kind === 'culture_crashes')
      cultures = cultures.map((each) => (each.id === change.cultureId ? crashingTomorrow(each) : each))
    if (change.kind === 'thin_less') cultures = cultures.map((each) => ({ ...each, thinnedToAnimals: null }))
    if (change.kind === 'away') cultures = cultures.map((each) => onHalfRations(each, change.days))
    if (change.kind === 'start_culture') cultures = withStarted(cultures, change, { horizon, first })
    if (change.kind === 'buy_in') cultures = [...cultures, boughtIn(change, horizon)]
  }
  return cultures
}

/** The same change to the days as expected and in every future. */
function withDays(culture: CultureAhead, change: (growth: readonly CultureDay[]) => CultureDay[]): CultureAhead {
  const futures = culture.futures.map((future) => ({ ...future, growth: change(future.growth) }))
  return { ...culture, growth: change(culture.growth), futures }
}

const gone: CultureDay = { gain: 0, crowding: 0 }

const crashingTomorrow = (culture: CultureAhead): CultureAhead => withDays(culture, (growth) => growth.map(() => gone))

/** On half the food a culture is taken to grow half as fast. assumption */
const onHalfRations = (culture: CultureAhead, days: number): CultureAhead =>
  withDays(culture, (growth) =>
    growth.map((day, index) => (index === 0 || index > days ? day : { ...day, gain: Math.sqrt(day.gain) })),
  )

const standsStill: CultureDay = { gain: 1, crowding: 0 }

/** A new vessel that grows as the one it was started from; that one has so many fewer from then on. */
function withStarted(
  cultures: readonly CultureAhead[],
  change: Change<'start_culture'>,
  { horizon, first }: Omit<Asked, 'changes'>,
): CultureAhead[] {
  const onDay = Math.max(0, daysBetween(horizon.today, change.onDate))
  const source = cultures.find(({ id }) => id === change.cultureId)
  if (!source || source.animals <= 0) return [...cultures]
  const there = animalsOn(source, onDay)
  const kept = there > 0 ? Math.max(0, 1 - change.animals / there) : 0
  return [
    ...cultures.map((each) => (each.id === source.id ? drawnFrom(each, { onDay, kept }) : each)),
    started(source, { change, onDay, first }),
  ]
}

/** Expected in a culture on the morning of a day, thinned on the way. */
function animalsOn({ animals, growth, thinnedToAnimals }: CultureAhead, onDay: number): number {
  return growth.slice(0, onDay).reduce((there, { gain, crowding }) => {
    const left = Math.min(there, thinnedToAnimals ?? there)
    return (gain * left) / (1 + crowding * left)
  }, animals)
}

function drawnFrom(source: CultureAhead, { onDay, kept }: { onDay: number; kept: number }): CultureAhead {
  if (onDay === 0) {
    const futures = source.futures.map((future) => ({ ...future, animals: future.animals * kept }))
    return { ...source, animals: source.animals * kept, futures }
  }
  return withDays(source, (growth) =>
    growth.map((day, index) => (index === onDay - 1 ? { ...day, gain: day.gain * kept } : day)),
  )
}

function started(
  source: CultureAhead,
  { change, onDay, first }: { change: Change<'start_culture'>; onDay: number; first: FirstHarvest },
): CultureAhead {
  const { volumeL, animals } = change
  const times = volumeL / source.volumeL
  // What its parent may die of later is its own luck: where that crashes, this one goes on as expected.
  const own = (growth: readonly CultureDay[]) =>
    growth.map((day, index) => {
      if (index < onDay) return standsStill
      const { gain, crowding } = day.gain > 0 ? day : source.growth[index]!
      return { gain, crowding: crowding / times }
    })
  const grown: CultureAhead = {
    ...withDays(source, own),
    ...{ id: `started ${change.onDate} ${change.cultureId}`, culture: null, name: 'the new culture', volumeL, animals },
    standing: 'too_young',
    goneShare: 0,
    floorAnimals: source.floorAnimals * times,
    thinnedToAnimals: source.thinnedToAnimals === null ? null : source.thinnedToAnimals * times,
    sharesCausesWith: [{ cultureId: source.id, causes: ['parent'] }],
  }
  const firstDay = firstHarvestOf(grown, { onDay, first })
  return { ...grown, firstDay, futures: grown.futures.map(({ growth }) => ({ animals, growth })) }
}

/** Old and dense enough for a first harvest, as expected. */
function firstHarvestOf(culture: CultureAhead, { onDay, first }: { onDay: number; first: FirstHarvest }): number {
  const enough = first.firstHarvestPerMl * culture.volumeL * 1000
  const youngest = onDay + first.firstHarvestAgeDays
  const dense = culture.growth.findIndex((_, day) => day >= onDay && animalsOn(culture, day) >= enough)
  return Math.max(youngest, dense < 0 ? culture.growth.length : dense)
}

/** Kept cold, where half live for two weeks, and fed from the day they come; packed as a jar is. */
function boughtIn({ animals, onDate }: Change<'buy_in'>, horizon: FoodHorizon): CultureAhead {
  const onDay = Math.max(0, daysBetween(horizon.today, onDate))
  const keeps: CultureDay = { gain: chilledReserve({ ageDays: 1 }).shareAlive, crowding: 0 }
  const growth = eachDay(horizon, (day) => (day < onDay ? standsStill : keeps))
  return {
    ...{ id: `bought ${onDate}`, culture: null, name: 'bought rotifers', animals, growth },
    volumeL: animals / chilledPerL,
    ...{ standing: 'gives', floorAnimals: 0, mostShare: 1, goneShare: 0, thinnedToAnimals: null, firstDay: onDay },
    futures: Array.from({ length: horizon.futures }, () => ({ animals, growth })),
    sharesCausesWith: [],
  }
}
