import { CHILLED_STORE, chilledReserve, DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import type { PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import { feedsFrom } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { densityAt } from './culture-state.ts'
import { dateOf, daysSince, factsUntil } from './day-facts.ts'

// Survival at 4 C is followed to 60 days at most (survival in the cold).
const oldestKnownDays = 60

/** What a harvest put into the cold, and what of it still lives. */
export type ChilledJar = {
  culture: SnapshotCulture
  harvest: FactOf<'harvest'>
  chilledOn: PlainDate
  ageDays: number
  /** Of the jar as it was filled, the share that nobody has drawn. */
  shareLeft: number
  /** Live rotifers in it. */
  alive: number
}

/** Litres of a harvest that went into the cold. */
export const chilledL = (fact: FactOf<'harvest'>): number =>
  fact.data.parts.filter(({ to }) => to === 'chilled_reserve').reduce((sum, part) => sum + part.volumeL, 0)

/** Share of chilled rotifers that live after so many days at 4 C. */
export const shareAliveAfter = (ageDays: number): number =>
  chilledReserve({ ageDays: Math.min(oldestKnownDays, Math.max(0, ageDays)) }).shareAlive

type Asked = { day: HusbandryDay; oldestDays: number }

/**
 * Chilled parts of a culture's harvests that nobody has discarded, oldest first. A discard takes the jar of the date that it
 * names, or all that were too old by then.
 */
function chilledParts(snapshot: RoomSnapshot, { id }: { id: string }, { day, oldestDays }: Asked) {
  const about = { subjectId: id, until: day.endsAt }
  const discards = factsUntil(snapshot, 'care', about).filter(({ data }) => data.act === 'discard_reserve')
  const isDiscarded = (fact: FactOf<'harvest'>) =>
    discards.some(({ at, data }) =>
      data.forDate === undefined
        ? (daysSince(snapshot, fact, dateOf(snapshot, at)) ?? 0) >= oldestDays
        : at > fact.at && data.forDate === dateOf(snapshot, fact.at),
    )
  return factsUntil(snapshot, 'harvest', about).filter((fact) => chilledL(fact) > 0 && !isDiscarded(fact))
}

/** The jars of a room's rotifers in the cold that may still feed larvae, oldest first; of strains that live through it. */
export function chilledJars(snapshot: RoomSnapshot, asked: Asked): ChilledJar[] {
  return snapshot.cultures
    .filter(({ kind, strain }) => kind === 'rotifer' && strain !== 'SS')
    .flatMap((culture) => jarsOf(snapshot, culture, asked))
    .filter(({ alive, ageDays }) => alive >= 1 && ageDays < asked.oldestDays)
    .sort((a, b) => (a.harvest.at < b.harvest.at ? -1 : a.harvest.at > b.harvest.at ? 1 : 0))
}

/** Every jar of a culture that nobody has discarded, oldest first, too old ones as well. */
export function jarsOf(snapshot: RoomSnapshot, culture: SnapshotCulture, { day, oldestDays }: Asked): ChilledJar[] {
  const filled = chilledParts(snapshot, culture, { day, oldestDays }).map((harvest) => ({
    ...{ harvest, animals: animalsChilled(snapshot, culture, harvest), shareLeft: 1 },
  }))
  for (const { at, data } of drawsOf(snapshot, culture, day)) {
    let { number, isAlive } = drawnBy(data)
    for (const jar of filled) {
      const ageDays = daysBetween(dateOf(snapshot, jar.harvest.at), dateOf(snapshot, at))
      const there = jar.animals * (isAlive ? shareAliveAfter(ageDays) : 1)
      if (jar.harvest.at > at || there <= 0) continue
      const drawn = Math.min(number, there * jar.shareLeft)
      jar.shareLeft -= drawn / there
      number -= drawn
    }
  }
  return filled.map(({ harvest, animals, shareLeft }) => {
    const chilledOn = dateOf(snapshot, harvest.at)
    const ageDays = daysBetween(chilledOn, day.date)
    return { culture, harvest, chilledOn, ageDays, shareLeft, alive: animals * shareLeft * shareAliveAfter(ageDays) }
  })
}

/** What a feed took out of the jars: so many that live, or so many mL of it, packed as it is kept, with the dead. */
const drawnBy = ({ animals, amountMl = 0 }: FactOf<'feeding'>['data']): { number: number; isAlive: boolean } =>
  animals === undefined
    ? { number: amountMl * CHILLED_STORE.densityPerMl, isAlive: false }
    : { number: animals, isAlive: true }

/** As dense as the culture was when it was drawn, less what sieving loses; nothing where nobody had counted it. */
function animalsChilled(snapshot: RoomSnapshot, culture: SnapshotCulture, harvest: FactOf<'harvest'>): number {
  const density = densityAt(snapshot, culture, { at: harvest.at, until: harvest.at })
  return (density?.densityPerMl ?? 0) * 1000 * chilledL(harvest) * (1 - DEFAULT_SIEVING_LOSS)
}

/** Feeds out of a culture's reserve, oldest first; one without an amount leaves the reserve as it was. */
const drawsOf = (snapshot: RoomSnapshot, { id }: SnapshotCulture, day: HusbandryDay): FactOf<'feeding'>[] =>
  feedsFrom(snapshot, id).filter(({ at, data }) => data.isChilled === true && at < day.endsAt)
