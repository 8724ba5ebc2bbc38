import { DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import { addDays, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { artemiaLotTestDefinition } from '../definitions/live-food/artemia-lot-test.ts'
import { artemiaStartDefinition } from '../definitions/live-food/artemia-start.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { dateOf, factsUntil } from '../state/day-facts.ts'
import { jarOf } from './nauplii-jar.ts'
import { tinTest, worstPerGram } from './tin-test.ts'

export type CystYield = { naupliiPerGram: number; by: 'test' | 'harvests'; fact: FactOf<'care'> | FactOf<'harvest'> }

// One count of a jar is a tenth or two beside the truth; the middle of some is not. common practice
const harvestsNeeded = 3
const mostHarvests = 5

/**
 * Nauplii out of a gram of dry cysts in this room: the middle of the last harvests whose jars were counted, of the tin as it was
 * since its last test; else what that test found. Null where neither says.
 */
export function cystYield(snapshot: RoomSnapshot, day: HusbandryDay): CystYield | null {
  const test = tinTest(snapshot, day)
  const { everyDays } = ruleInForce(snapshot, artemiaLotTestDefinition).parameters
  const oldest = addDays(day.date, -everyDays)
  const seen = snapshot.cultures
    .filter(({ kind }) => kind === 'artemia_hatch')
    .flatMap((vessel) => harvestsOf(snapshot, vessel, day))
    .filter(({ fact }) => dateOf(snapshot, fact.at) >= oldest && (!test || fact.at > test.fact.at))
    .sort((a, b) => (a.fact.at < b.fact.at ? -1 : 1))
    .slice(-mostHarvests)
  const last = seen.at(-1)
  if (!last || seen.length < harvestsNeeded) return test && { ...test, by: 'test' }
  const middle = seen.map(({ perGram }) => perGram).sort((a, b) => a - b)[Math.floor(seen.length / 2)]!
  return { naupliiPerGram: Math.max(worstPerGram, middle), by: 'harvests', fact: last.fact }
}

/** Harvests of which cysts, mL and density are known, and what a gram gave before the sieve took its share. */
function harvestsOf(
  snapshot: RoomSnapshot,
  vessel: SnapshotCulture,
  day: HusbandryDay,
): { fact: FactOf<'harvest'>; perGram: number }[] {
  const about = { subjectId: vessel.id, until: day.endsAt }
  const { cysts, wetPerDry } = ruleInForce(snapshot, artemiaStartDefinition).parameters
  const starts = factsUntil(snapshot, 'care', about).filter(({ data }) => data.act === 'start_artemia')
  return factsUntil(snapshot, 'harvest', about).flatMap((fact) => {
    const weighedG = starts.findLast(({ at }) => at < fact.at)?.data.cystsG
    const held = jarOf(snapshot, { vessel, harvest: fact, until: day.endsAt })?.heldAnimals
    if (!weighedG || !held) return []
    const dryG = cysts === 'drained_without_shells' ? weighedG / wetPerDry : weighedG
    return [{ fact, perGram: held / (1 - DEFAULT_SIEVING_LOSS) / dryG }]
  })
}
