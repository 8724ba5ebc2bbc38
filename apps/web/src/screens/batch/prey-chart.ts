import type { CountTarget, Fact, Id, Instant, Rule } from '@fryward/shared'
import { densityOf } from '@/parts/facts/density-of.ts'

export type PreyCount = {
  factId: Id
  at: Instant
  of: CountTarget
  perMl: number
  /** The thinnest and the densest of its samples; the same as `perMl` for a single one. */
  lowestPerMl: number
  highestPerMl: number
  samples: number
}
export type PreyFeed = { factId: Id; at: Instant }
/** What the rule "top up the prey" keeps in the water, per mL. */
export type HeldBand = { lowest: number; target: number; most: number }

export const preyTargets: readonly CountTarget[] = ['prey_rotifers', 'prey_artemia']
const liveFoods: ReadonlySet<string> = new Set(['rotifers', 'artemia', 'copepods'])

/** Standing counts of prey and feeds of live prey since an instant, oldest first. */
export function readPrey(facts: Fact[], since: Instant): { counts: PreyCount[]; feeds: PreyFeed[] } {
  const standing = facts.filter((fact) => fact.struckAt === null && fact.at >= since).toReversed()
  return {
    counts: standing.flatMap((fact): PreyCount[] => {
      if (fact.kind !== 'count' || !preyTargets.includes(fact.data.of)) return []
      const perMl = densityOf(fact.data)
      if (perMl === undefined) return []
      const ofSample = (animals: number) => densityOf({ ...fact.data, animals: [animals] }) ?? perMl
      return [
        {
          ...{ factId: fact.id, at: fact.at, of: fact.data.of, perMl },
          lowestPerMl: ofSample(Math.min(...fact.data.animals)),
          highestPerMl: ofSample(Math.max(...fact.data.animals)),
          samples: fact.data.animals.length,
        },
      ]
    }),
    feeds: standing.flatMap((fact) =>
      fact.kind === 'feeding' && liveFoods.has(fact.data.food) ? [{ factId: fact.id, at: fact.at }] : [],
    ),
  }
}

/** The rule whose parameters are the band; it is off in a room that does not top up by counts. */
const topUpRuleId = 'larval-prey-top-up'

/** The band a room means to hold, from its own rule; undefined where that rule is off. */
export function heldBand(rules: Rule[]): HeldBand | undefined {
  const rule = rules.find((one) => one.id === topUpRuleId)
  if (!rule?.isOn) return undefined
  const numberOf = (name: string) => {
    const value = rule.parameters.find((one) => one.name === name)?.value
    return typeof value === 'number' ? value : undefined
  }
  const [lowest, target, most] = [numberOf('refillUnderPerMl'), numberOf('targetPerMl'), numberOf('mostPerMl')]
  return lowest === undefined || target === undefined || most === undefined ? undefined : { lowest, target, most }
}
