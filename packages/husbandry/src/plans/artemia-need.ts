import { DEFAULT_SIEVING_LOSS, preyTopUp } from '@fryward/live-feed'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, spreadRounds } from '../calendar/rounds.ts'
import { larvalArtemiaFeedDefinition } from '../definitions/larvae/larval-artemia-feed.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { standingBatches } from '../state/batch-state.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { isDoneInRound } from '../state/done-in-round.ts'
import { type PreyCount, preyCounts, preyFeedings } from '../state/grazing.ts'
import { type LarvalDiet, larvalDiet, tankOf } from '../state/larval-diet.ts'

export type ArtemiaFeed = {
  round: DayRound
  tank: SnapshotTank
  diet: LarvalDiet
  targetPerMl: number
  count: PreyCount | null
  nauplii: number
}

/** What each Artemia feed of a day asks for; empty when a batch does not eat Artemia that day. */
export function artemiaFeeds(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): ArtemiaFeed[] {
  const { isOn, parameters } = ruleInForce(snapshot, larvalArtemiaFeedDefinition)
  const diet = larvalDiet(batch, day.date)
  const tank = tankOf(snapshot, batch)
  if (!isOn || !diet?.isOnArtemia || !tank) return []
  const { from, to } = diet.species.feeding.artemiaPerMl.value
  const daysOn = diet.day - diet.species.feeding.artemiaFirstDay.value
  const progress = parameters.stretchDays === 0 ? 1 : Math.min(1, daysOn / parameters.stretchDays)
  const targetPerMl = Math.min(parameters.mostPerMl, from + (to - from) * progress)
  const about = { prey: 'artemia', until: day.endsAt } as const
  const last = preyCounts(snapshot, batch, about).at(-1) ?? null
  const fed = preyFeedings(snapshot, batch, about).at(-1)
  // They are eaten within an hour or two: without a count since the last feed nothing is taken to be left.
  const count = last && (!fed || last.fact.at > fed.at) && last.fact.at >= day.startsAt ? last : null
  const rounds = spreadRounds(day, parameters.feedsPerDay)
  return rounds.map((round) => {
    const { animalsToAdd } = preyTopUp({
      targetPerMl,
      residualPerMl: count?.perMl ?? 0,
      volumeL: tank.volumeL,
      hoursUntilNextFeed: 0,
    })
    return { round, tank, diet, targetPerMl, count, nauplii: animalsToAdd }
  })
}

/** The feeds of a day that still have something to ask, and all its rounds of Artemia. */
export function artemiaFeedsAsked(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  day: HusbandryDay,
): { rounds: DayRound[]; asked: ArtemiaFeed[] } {
  const feeds = artemiaFeeds(snapshot, batch, day)
  const rounds = feeds.map(({ round }) => round)
  const given = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day })
  const fed = given.filter(({ data }) => data.food === 'artemia')
  const asked = feeds.filter(({ round, nauplii }) => nauplii > 0 && !isDoneInRound(fed, { day, rounds, round }))
  return { rounds, asked }
}

export type ArtemiaNeed = { batch: SnapshotBatch; nauplii: number }

/** Nauplii that a day's feeds will take out of the hatch, what is lost in sieving included. */
export function artemiaNeeds(snapshot: RoomSnapshot, day: HusbandryDay): ArtemiaNeed[] {
  return standingBatches(snapshot)
    .map((batch) => ({
      batch,
      nauplii:
        artemiaFeeds(snapshot, batch, day).reduce((sum, feed) => sum + feed.nauplii, 0) / (1 - DEFAULT_SIEVING_LOSS),
    }))
    .filter(({ nauplii }) => nauplii > 0)
    .sort((a, b) => a.batch.name.localeCompare(b.batch.name, 'en') || (a.batch.id < b.batch.id ? -1 : 1))
}
