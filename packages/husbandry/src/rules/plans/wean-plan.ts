import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotBatch } from '../../snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { type LarvalDiet, larvalDiet } from '../../state/larval-diet.ts'
import { isDoneInRound } from '../done.ts'
import { type DayRound, spreadRounds } from '../rounds.ts'
import { artemiaFeedsAsked } from './artemia-need.ts'

export const weanId = 'larval-wean'

/** Parameters of offering dry food; here because an Artemia feed of the same round offers it first. */
export const weanParameters = {
  feedsPerDay: {
    type: 'number',
    label: 'a day',
    unit: 'feeds',
    default: 2,
    minimum: 1,
    maximum: 8,
    source: commonPractice('two beside the live food; more for those who are there'),
  },
} satisfies Parameters

export type Weaning = {
  diet: LarvalDiet
  rounds: DayRound[]
  /** With an Artemia feed of the same round: dry food first, while they are hungry. */
  withArtemia: DayRound[]
  alone: DayRound[]
}

/** At which rounds a batch is offered dry food, and at which of them Artemia follow; null before its weaning day. */
export function weaning(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Weaning | null {
  const { isOn, parameters } = ruleInForce(snapshot, { id: weanId, isOnByDefault: true, parameters: weanParameters })
  const diet = larvalDiet(batch, day.date)
  if (!isOn || !diet || diet.day < diet.species.feeding.weaningFirstDay.value) return null
  const rounds = spreadRounds(day, parameters.feedsPerDay)
  const feedings = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day })
  const fed = feedings.filter(({ data }) => data.food === 'dry')
  const asked = rounds.filter((round) => !isDoneInRound(fed, { day, rounds, round }))
  const artemiaIds = new Set(artemiaFeedsAsked(snapshot, batch, day).asked.map(({ round }) => round.id))
  return {
    diet,
    rounds,
    withArtemia: asked.filter(({ id }) => artemiaIds.has(id)),
    alone: asked.filter(({ id }) => !artemiaIds.has(id)),
  }
}
