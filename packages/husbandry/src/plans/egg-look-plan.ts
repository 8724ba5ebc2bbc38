import type { EggLookLack } from '@fryward/shared'
import { elapsedHours } from '../calendar/elapsed.ts'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { pairLookForEggsDefinition } from '../definitions/broodstock/pair-look-for-eggs.ts'
import type { FactOf } from '../facts/fact.ts'
import { Gap } from '../rule/gap.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotPair, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { findSpecies, type SpeciesProfile } from '../species/index.ts'
import { dateOf, daysSince, factsUntil } from '../state/day-facts.ts'
import { isBrooding, type PairOutlook, pairOutlook } from '../state/pair-outlook.ts'
import { hasFloatingEggs, placeForFloating } from './floating-eggs.ts'

export type EggLook = {
  pair: SnapshotPair
  species: SpeciesProfile
  outlook: PairOutlook | null
  /** Where floating eggs go; null for others, and where no larval tank is known. */
  tank: SnapshotTank | null
}

// Eggs of this evening or the last. common practice
const laidWithinHours = 36

/**
 * The look for eggs that a day asks for at a pair; null when none is due, or somebody has looked.
 * @throws Gap for a species without a profile: nothing says how it broods or how often.
 */
export function eggLookDue(snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): EggLook | null {
  if (!isLookedAt(snapshot, pair, day)) return null
  const { everyDays } = ruleInForce(snapshot, pairLookForEggsDefinition).parameters
  const looks = factsUntil(snapshot, 'observation', { subjectId: pair.id, until: day.endsAt }).filter(({ data }) =>
    data.signs.some((sign) => sign === 'eggs_seen' || sign === 'no_eggs'),
  )
  const sinceLook = daysSince(snapshot, looks.at(-1), day.date)
  if (sinceLook !== null && sinceLook < 1) return null
  const species = findSpecies(pair.species)
  if (!species)
    throw new Gap(`${pair.name}: how often its species spawns is not known here. Look for eggs every few days.`)
  if (species.care.value === 'pelagic')
    return floatingLook(snapshot, { pair, species, everyDays, last: looks.at(-1) }, day)
  const outlook = pairOutlook(snapshot, pair, day)
  // Once its window is open it stays open until eggs are found: a late pair is looked at all the same.
  const isInWindow = outlook !== null && day.date >= outlook.forecast.window80.from
  if (!isInWindow && sinceLook !== null && sinceLook < everyDays) return null
  // A clutch found and lost or moved on one day is not looked for again on it.
  if (outlook && daysBetween(dateOf(snapshot, outlook.last.at), day.date) < 1) return null
  return { pair, species, outlook, tank: null }
}

/** Whether a pair may have eggs that somebody wants to hear of: asked for, together, neither resting nor with eggs already. */
function isLookedAt(snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): boolean {
  const { isOn } = ruleInForce(snapshot, pairLookForEggsDefinition)
  if (!isOn || pair.isResting || isBrooding(snapshot, pair)) return false
  return pair.formedOn === null || pair.formedOn <= day.date
}

/** What alone keeps a pair's floating eggs from being looked for on a day; nothing of eggs that do not float. */
export const lacksForEggs = (snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): EggLookLack[] =>
  hasFloatingEggs(pair) && isLookedAt(snapshot, pair, day) ? placeForFloating(snapshot, day).lacks : []

type Floating = Pick<EggLook, 'pair' | 'species'> & { everyDays: number; last: FactOf<'observation'> | undefined }

/** Fish that spawn most evenings are looked at while there is a place for their eggs, and seldom where eggs were just left. */
function floatingLook(
  snapshot: RoomSnapshot,
  { pair, species, everyDays, last }: Floating,
  day: HusbandryDay,
): EggLook | null {
  const { lacks, tank } = placeForFloating(snapshot, day)
  if (lacks.length > 0) return null
  const wereLeft = last?.data.signs.includes('eggs_seen') && !wereCollected(snapshot, pair, last)
  if (wereLeft && (daysSince(snapshot, last, day.date) ?? everyDays) < everyDays) return null
  return { pair, species, outlook: null, tank }
}

const wereCollected = (snapshot: RoomSnapshot, pair: SnapshotPair, { at }: FactOf<'observation'>): boolean =>
  snapshot.clutches.some(
    ({ pairId, spawnedAt }) => pairId === pair.id && spawnedAt <= at && elapsedHours(spawnedAt, at) < laidWithinHours,
  )
