import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { liveFeedRounds } from '../calendar/light.ts'
import { type DayRound, roundOfInstant } from '../calendar/rounds.ts'
import { juvenileFeedDefinition } from '../definitions/juveniles/juvenile-feed.ts'
import { larvalWeanDefinition } from '../definitions/larvae/larval-wean.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { asClownfishMm, lengthMmAt, weightGOf } from '../species/juvenile-growth.ts'
import type { WeanedFood } from '../species/schema.ts'
import { isWeanedFood } from '../species/weaned-food.ts'
import { batchNumbers } from '../state/batch-state.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { isDoneInRound } from '../state/done-in-round.ts'
import { type LarvalDiet, larvalDiet, tankOf } from '../state/larval-diet.ts'
import { litDay } from '../state/tank-light.ts'
import { daysWeaned } from '../state/weaned.ts'
import { artemiaFeeds, artemiaFeedsAsked } from './artemia-need.ts'
import { shareAt } from './juvenile-ration.ts'

export type Weaning = {
  diet: LarvalDiet
  /** What they are weaned to. */
  food: WeanedFood
  rounds: DayRound[]
  /** With an Artemia feed of the same round: what they are weaned to first, while they are hungry. */
  withArtemia: DayRound[]
  alone: DayRound[]
  /** It is all that they get: they are fed as juveniles are, until there is room for them in grow-out. */
  isAll: boolean
  /** Of it for one feed, at the most while live food follows, g: what so many of that length eat in a day, by feeds; null while nobody has numbered them. */
  feedG: number | null
}

/** At which rounds a batch is offered what it is weaned to, and at which of them Artemia follow; null before its weaning day. */
export function weaning(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Weaning | null {
  const { isOn, parameters } = ruleInForce(snapshot, larvalWeanDefinition)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || !diet || diet.day < diet.species.feeding.weaningFirstDay.value) return null
  const isAll =
    !diet.isOnRotifers && daysWeaned(snapshot, batch, day) !== null && artemiaFeeds(snapshot, batch, day).length === 0
  const asJuveniles = ruleInForce(snapshot, juvenileFeedDefinition).parameters
  const { growth } = diet.species
  const isSmall = asClownfishMm(growth, lengthMmAt(growth, diet.day)) < asJuveniles.smallUntilMm
  const grownFeeds = isSmall ? asJuveniles.smallFeedsPerDay : asJuveniles.feedsPerDay
  const number = isAll ? Math.max(parameters.feedsPerDay, grownFeeds) : parameters.feedsPerDay
  // They hunt by eye.
  const lit = litDay(snapshot, tankOf(snapshot, batch), day.date)
  const rounds = liveFeedRounds(lit, { number, hoursBeforeDark: 0 })
  const feedings = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day })
  const fed = feedings.filter(({ data }) => isWeanedFood(data.food))
  // Whichever task it went with: what an Artemia feed of this round gave is not asked for again by itself.
  const isGiven = (round: DayRound) => fed.some(({ at }) => roundOfInstant(rounds, at)?.id === round.id)
  const asked = rounds.filter((round) => !isGiven(round) && !isDoneInRound(fed, { day, rounds, round }))
  const artemiaIds = new Set(artemiaFeedsAsked(snapshot, batch, day).asked.map(({ round }) => round.id))
  return {
    diet,
    food: diet.species.feeding.weanedTo.value,
    rounds,
    withArtemia: asked.filter(({ id }) => artemiaIds.has(id)),
    alone: asked.filter(({ id }) => !artemiaIds.has(id)),
    isAll,
    feedG: feedG(snapshot, batch, { diet, feeds: rounds.length }),
  }
}

function feedG(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { diet: { day, species }, feeds }: { diet: LarvalDiet; feeds: number },
): number | null {
  const { now } = batchNumbers(snapshot, batch)
  if (now === null) return null
  const { growth, feeding } = species
  const lengthMm = lengthMmAt(growth, day)
  const { parameters } = ruleInForce(snapshot, juvenileFeedDefinition)
  const share = shareAt(asClownfishMm(growth, lengthMm), feeding.weanedTo.value, parameters)
  return (now * weightGOf(growth, lengthMm) * share) / Math.max(1, feeds)
}
