import { seededRandom } from '@fryward/live-feed'
import { crashCauses } from '@fryward/shared'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { seedOf } from './seed-of.ts'

export type SharedCause = (typeof crashCauses)[number]

/**
 * Of the crashes of a culture that shares something with others, those that it shares with them. Bad food, an old strain or
 * one sieve take several vessels in a night; how often nobody has counted. assumption
 */
const SHARED_OF_CRASHES = 0.5

type Shares = Pick<
  SnapshotCulture,
  'id' | 'concentrateId' | 'parentCultureId' | 'isBackup' | 'airLine' | 'shelf' | 'tools'
>

/** What a culture might crash of together with others, each with a name that all of them have for it. */
function causesOf(culture: Shares, all: readonly Shares[]): { cause: SharedCause; name: string }[] {
  const { concentrateId, isBackup, airLine, shelf, tools } = culture
  return [
    ...(airLine === null ? [] : [{ cause: 'air' as const, name: `air ${sameWord(airLine)}` }]),
    ...(shelf === null ? [] : [{ cause: 'shelf' as const, name: `shelf ${sameWord(shelf)}` }]),
    ...(concentrateId === null ? [] : [{ cause: 'bottle' as const, name: `bottle ${concentrateId}` }]),
    { cause: 'parent' as const, name: `parent ${firstParent(culture, all)}` },
    ...(tools === null
      ? // A backup has its own sieve: that is what makes it one. Of others one sieve is thought, until it is said.
        isBackup
        ? []
        : [{ cause: 'tools' as const, name: 'tools' }]
      : [{ cause: 'tools' as const, name: `tools ${sameWord(tools)}` }]),
  ]
}

const sameWord = (word: string): string => word.trim().toLowerCase()

/** The culture that all of a line come from, as far back as the room's cultures know. */
function firstParent({ id, parentCultureId }: Shares, all: readonly Shares[], seen: readonly string[] = []): string {
  if (parentCultureId === null || seen.includes(id)) return id
  const parent = all.find((other) => other.id === parentCultureId)
  return parent ? firstParent(parent, all, [...seen, id]) : parentCultureId
}

/** Which others each culture shares a cause of crashing with. */
export function sharedCauses(culture: Shares, all: readonly Shares[]): { cultureId: string; causes: SharedCause[] }[] {
  const own = causesOf(culture, all)
  return all.flatMap((other) => {
    if (other.id === culture.id) return []
    const names = new Set(causesOf(other, all).map(({ name }) => name))
    const causes = own.filter(({ name }) => names.has(name)).map(({ cause }) => cause)
    return causes.length > 0 ? [{ cultureId: other.id, causes }] : []
  })
}

type Asked = { cultures: readonly Shares[]; hazardPerDay: number; futures: number }

/**
 * In each future the day, with its fraction, on which each culture crashes: crashes[culture][future]. Every culture crashes
 * as often as the hazard says; each cause takes all that have it along, and one that nobody shares is one of its own.
 */
export function crashDays({ cultures, hazardPerDay, futures }: Asked): number[][] {
  const daysOf = (name: string, shareOfHazard: number): number[] => {
    const random = seededRandom(seedOf(`crash ${name}`))
    return Array.from({ length: futures }, () => -Math.log(random.uniform()) / (shareOfHazard * hazardPerDay))
  }
  return cultures.map((culture) => {
    const causes = causesOf(culture, cultures)
    const struck = causes.map(({ name }) => daysOf(name, OF_EACH_CAUSE))
    const alone = daysOf(`alone ${culture.id}`, 1 - causes.length * OF_EACH_CAUSE)
    return alone.map((day, future) => Math.min(day, ...struck.map((days) => days[future]!)))
  })
}

/** Shared evenly, so that a culture with all causes is the one that shares half of its crashes. */
const OF_EACH_CAUSE = SHARED_OF_CRASHES / crashCauses.length
