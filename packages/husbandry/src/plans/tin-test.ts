import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { artemiaLotTestDefinition } from '../definitions/live-food/artemia-lot-test.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'

export type TinTest = { fact: FactOf<'care'>; naupliiPerGram: number }

// A tin that hatches worse than a tenth of a good one is no measure for the next. common practice
export const worstPerGram = 20_000

/** What the open tin gave at its last test, while that is no older than a test lasts; null when it was never tested. */
export function tinTest(snapshot: RoomSnapshot, day: HusbandryDay): TinTest | null {
  const { parameters } = ruleInForce(snapshot, artemiaLotTestDefinition)
  const fact = snapshot.cultures
    .filter(({ kind }) => kind === 'artemia_hatch')
    .flatMap(({ id }) => factsUntil(snapshot, 'care', { subjectId: id, until: day.endsAt }))
    .filter(({ data }) => data.act === 'test_cysts')
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1)
  const naupliiPerGram = fact?.data.naupliiPerGram
  const age = daysSince(snapshot, fact, day.date)
  if (!fact || naupliiPerGram === undefined || age === null || age > 2 * parameters.everyDays) return null
  return { fact, naupliiPerGram: Math.max(worstPerGram, naupliiPerGram) }
}
