import type { CountTarget, Fact, Id, Instant, Rule } from '@fryward/shared'
import { startOfDay } from '@/base/dates/local-time.ts'
import { toPlainDate } from '@/base/dates/say.ts'
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

/** Midnights of the room between two instants, as instants. */
export function midnightsBetween(from: Date, until: Date, timeZone: string): Instant[] {
  const midnights: Instant[] = []
  const dayMs = 86_400_000
  // A day longer than 24 h (clocks put back) would be met twice by steps of 24 h; a set keeps it once.
  const dates = new Set<string>()
  for (let ms = from.getTime(); ms <= until.getTime() + dayMs; ms += dayMs)
    dates.add(toPlainDate(new Date(ms), timeZone))
  for (const date of dates) {
    const at = startOfDay(date, timeZone)
    if (Date.parse(at) >= from.getTime() && Date.parse(at) <= until.getTime()) midnights.push(at)
  }
  return midnights
}
