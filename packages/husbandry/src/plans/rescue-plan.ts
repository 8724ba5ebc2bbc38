import { DEFAULT_SIEVING_LOSS, inoculum } from '@fryward/live-feed'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { cultureStartedAt } from '../state/culture-history.ts'
import { type CultureDensity, densityAt } from '../state/culture-state.ts'
import { measurableL, measurableLDown } from '../task/measures.ts'
import { cultureSupply, isSound } from './culture-supply.ts'
import { keptForLarvaeL } from './kept-for-larvae.ts'

// A rescuer that is hardly thicker than what it should start rescues nobody. common practice
const thinnestSourcePerMl = 50
// Thinner than this a start takes two weeks and more, and whatever else came along outgrows it. common practice
const thinnestStartPerMl = 10

/** What it can still give today: never so much that the rescuer is lost too. */
type Rescuer = CultureDensity & { culture: SnapshotCulture; leftL: number }
export type Rescue = { source: Rescuer; plannedL: number; animalsPerL: number; isThin: boolean }

/** What the best rescuer gives, and whether that is a thin start; null when nobody can help. */
export function rescueFor(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, startPerMl }: { day: HusbandryDay; startPerMl: number },
): Rescue | null {
  const source = rescuerOf(snapshot, culture, day)
  if (!source) return null
  const plannedL = litresToStart({ culture, source, startPerMl })
  const animalsPerL = source.densityPerMl * 1000 * (1 - DEFAULT_SIEVING_LOSS)
  const start = inoculum({ animals: plannedL * animalsPerL, volumeL: culture.volumeL })
  return { source, plannedL, animalsPerL, isThin: start.verdict === 'too-thin' }
}

/** A sound backup of the same strain that has something left to give before any other culture, the densest first. */
function rescuerOf(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Rescuer | undefined {
  const moment = { at: firstRound(day).startsAt, until: day.endsAt }
  const densityOf = (each: SnapshotCulture) => densityAt(snapshot, each, moment)
  const alike = snapshot.cultures.filter(({ kind, strain }) => kind === 'rotifer' && strain === culture.strain)
  const sound = alike.filter(
    (each) =>
      each.id !== culture.id &&
      isSound(snapshot, each, day) &&
      (densityOf(each)?.densityPerMl ?? 0) > 0 &&
      cultureStartedAt(snapshot, each, day.endsAt) < day.startsAt,
  )
  const waiting = alike.filter((each) => !sound.includes(each)).sort((a, b) => (a.id < b.id ? -1 : 1))
  return sound
    .flatMap((each) => {
      const density = densityOf(each)
      if (!density || density.densityPerMl < thinnestSourcePerMl) return []
      const spare = spareL(snapshot, each, { day, isLast: sound.length === 1 })
      const leftL = shareL(spare, { culture, waiting, density })
      return leftL > 0 ? [{ culture: each, leftL, ...density }] : []
    })
    .sort(
      (a, b) =>
        Number(b.culture.isBackup) - Number(a.culture.isBackup) ||
        b.densityPerMl - a.densityPerMl ||
        (a.culture.id < b.culture.id ? -1 : 1),
    )[0]
}

/**
 * What larvae leave of what a culture can give today. Of the last sound one in the room half goes before them: when that is lost
 * too, there is nothing left to feed anybody. common practice
 */
function spareL(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  given: { day: HusbandryDay; isLast: boolean },
): number {
  const { leftL } = cultureSupply(snapshot, culture, given.day)
  const restL = Math.max(0, leftL - keptForLarvaeL(snapshot, culture, given.day))
  return given.isLast ? Math.max(restL, leftL / 2) : restL
}

type Start = { culture: SnapshotCulture; waiting: readonly SnapshotCulture[]; density: CultureDensity }

/** An equal part for each that may have to begin, so that none is promised twice; all for the first where that is too thin a start. */
function shareL(spare: number, { culture, waiting, density }: Start): number {
  const isEnough = (litres: number) =>
    (litres * density.densityPerMl * (1 - DEFAULT_SIEVING_LOSS)) / culture.volumeL >= thinnestStartPerMl
  const [part, all] = [measurableLDown(spare / waiting.length), measurableLDown(spare)]
  if (isEnough(part)) return part
  return waiting[0]?.id === culture.id && isEnough(all) ? all : 0
}

function litresToStart(input: { culture: SnapshotCulture; source: Rescuer; startPerMl: number }): number {
  const { culture, source, startPerMl } = input
  const wantedL = (startPerMl * culture.volumeL) / (source.densityPerMl * (1 - DEFAULT_SIEVING_LOSS))
  return Math.min(source.leftL, measurableL(wantedL))
}
