import {
  addDays,
  curesInForce,
  daysBetween,
  deliveryBy,
  type FoodAhead,
  husbandryDay,
  type RoomSnapshot,
} from '@fryward/husbandry'
import type { CureChange, FoodChange, FoodOutlook } from '@fryward/shared'

// About 60 per mL, in the published range for starting a vessel (live-feed, inoculum).
const startPerMl = 60
const million = 1e6

/**
 * What might cure a worry, in the order in which a breeder would think of it: raise less, thin less, let the backup and
 * the chilled reserve give, start another culture, buy in, end rotifers sooner. Whether it does is for the planner to say.
 */
export function curesToTry(
  snapshot: RoomSnapshot,
  { ahead, outlook }: { ahead: FoodAhead; outlook: FoodOutlook },
): FoodChange[] {
  const { worry } = outlook
  if (!worry) return []
  const day = husbandryDay({ room: snapshot.room, date: ahead.today })
  const chosen = new Set(curesInForce(snapshot, day).map(({ change }) => change.kind))
  const cures: FoodChange[] = [
    ...raiseLess(outlook, worry.date),
    ...(ahead.cultures.some(({ thinnedToAnimals }) => thinnedToAnimals !== null)
      ? [{ kind: 'thin_less' } as const]
      : []),
    ...(ahead.cultures.some(({ standing }) => standing === 'backup') ? [{ kind: 'use_backups' } as const] : []),
    ...(ahead.cultures.some(({ standing }) => standing === 'chilled') ? [{ kind: 'use_reserve' } as const] : []),
    ...startAnother(ahead, worry.date),
    ...buyIn(snapshot, { ahead, outlook }),
    ...(outlook.eaters.length > 0 ? [{ kind: 'artemia_sooner' } as const] : []),
  ]
  return cures.filter(({ kind }) => !(onceOnly.has(kind) && chosen.has(kind as CureChange['kind'])))
}

/** Chosen once, they are done as far as they can be. */
const onceOnly: ReadonlySet<FoodChange['kind']> = new Set([
  ...(['thin_less', 'use_backups', 'use_reserve', 'artemia_sooner'] as const),
])

/** A clutch that would eat by then left with its parents, or half and a quarter of its larvae kept; the largest first. */
function raiseLess({ eaters, days }: FoodOutlook, worryDate: string): FoodChange[] {
  const eats = (id: string) => days.some((day) => day.eaters.some((each) => each.id === id && each.wanted > 0))
  const clutches = eaters
    .filter(
      ({ id, kind, nights }) => kind === 'clutch' && eats(id) && (nights[0]?.date ?? worryDate) < addDays(worryDate, 7),
    )
    .sort((a, b) => (b.larvae ?? 0) - (a.larvae ?? 0))
  const [clutch] = clutches
  if (!clutch) return []
  const larvae = clutch.larvae ?? 0
  const keep = [2, 4].map((part): FoodChange => {
    return { kind: 'keep_larvae', subjectId: clutch.subjectId, larvae: Math.max(1, roundLarvae(larvae / part)) }
  })
  return [...(larvae > 20 ? keep : []), { kind: 'leave_clutch', clutchId: clutch.subjectId }]
}

/** To what one would say: tens, or hundreds of many. */
const roundLarvae = (larvae: number): number =>
  larvae > 300 ? Math.round(larvae / 50) * 50 : Math.round(larvae / 10) * 10

/** A vessel like those that stand, from the fullest that gives: now, and as late as half way to the worry. */
function startAnother({ cultures, today }: FoodAhead, worryDate: string): FoodChange[] {
  const giving = cultures.filter(({ standing }) => standing === 'gives').sort((a, b) => b.animals - a.animals)
  const [source] = giving
  if (!source) return []
  const volumes = giving.map(({ volumeL }) => volumeL).sort((a, b) => a - b)
  const volumeL = volumes[Math.floor(volumes.length / 2)]!
  const animals = roundedUp(Math.min(startPerMl * volumeL * 1000, source.animals * source.mostShare), million / 10)
  const halfWay = Math.floor(daysBetween(today, worryDate) / 2)
  const dates = new Set([addDays(today, 1), addDays(today, Math.max(1, halfWay))])
  return [...dates].map(
    (onDate): FoodChange => ({ kind: 'start_culture', cultureId: source.id, volumeL, animals, onDate }),
  )
}

/** What is missing over all days, with what sieving loses, on the last day of post before it is missing. */
function buyIn(
  snapshot: RoomSnapshot,
  { ahead: { today, sievingLoss }, outlook: { worry, shortTotal } }: { ahead: FoodAhead; outlook: FoodOutlook },
): FoodChange[] {
  if (!worry || shortTotal <= 0) return []
  const onDate = deliveryBy(snapshot, { today, by: worry.date })
  return [{ kind: 'buy_in', animals: roundedUp(shortTotal / (1 - sievingLoss), million), onDate }]
}

const roundedUp = (value: number, step: number): number => Math.ceil(value / step) * step
