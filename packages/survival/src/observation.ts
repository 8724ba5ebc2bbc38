import { ArgumentError, assertAtLeast } from './argument-error.ts'

/** One animal, or `weight` animals that share a fate. */
export type Observation = {
  /** Age or day at which it died or was last seen alive. */
  time: number
  /** True when it died; false when it was still alive: moved, placed, culled, or the end of the watch. */
  event: boolean | 0 | 1
  /** How many animals this stands for; 1 when left out. */
  weight?: number
  /** Age or day at which it came under watch (a fish moved in); from the start when left out. */
  enteredAt?: number
}

/** What happens to the animals under watch at one time. */
export type RiskSet = {
  time: number
  /** Animals alive and under watch just before this time. */
  atRisk: number
  events: number
  /** At risk and not dead at this time. */
  survivors: number
}

/** Fractional weights that ought to cancel leave about 1e-16 of their sum; far under one animal. */
const ROUNDING_SHARE = 1e-12

function check(observations: readonly Observation[], name: string): void {
  if (observations.length === 0) {
    throw new ArgumentError({ argument: name, value: 'empty', allowed: 'at least one observation' })
  }
  observations.forEach(({ time, event, weight = 1, enteredAt }, index) => {
    const at = `${name}[${index}]`
    assertAtLeast(`${at}.time`, time, 0)
    assertAtLeast(`${at}.weight`, weight, 0)
    if (![true, false, 0, 1].includes(event)) {
      throw new ArgumentError({ argument: `${at}.event`, value: event, allowed: 'true or false' })
    }
    if (enteredAt === undefined) return
    assertAtLeast(`${at}.enteredAt`, enteredAt, 0)
    if (enteredAt >= time) {
      throw new ArgumentError({ argument: `${at}.enteredAt`, value: enteredAt, allowed: `under its time, ${time}` })
    }
  })
}

type Tally = { events: number; leaving: number; entering: number }

function tallyByTime(observations: readonly Observation[]): Map<number, Tally> {
  const tallies = new Map<number, Tally>()
  const at = (time: number): Tally => {
    const tally = tallies.get(time) ?? { events: 0, leaving: 0, entering: 0 }
    tallies.set(time, tally)
    return tally
  }
  for (const { time, event, weight = 1, enteredAt } of observations) {
    at(time)[event ? 'events' : 'leaving'] += weight
    if (enteredAt !== undefined) at(enteredAt).entering += weight
  }
  return tallies
}

/**
 * The risk set at every time that something happens, in order of time. At a tie, deaths come before those who leave
 * alive (Kaplan & Meier 1958), and who enters at a time is at risk only after it.
 * @throws ArgumentError for no observations, a negative or missing number, or an entry not before its end.
 */
export function riskSets(observations: readonly Observation[], name = 'observations'): RiskSet[] {
  check(observations, name)
  const descending = [...tallyByTime(observations)].sort(([a], [b]) => b - a)
  const total = observations.reduce((sum, { weight = 1 }) => sum + weight, 0)
  let later = 0
  const sets: RiskSet[] = []
  for (const [time, { events, leaving, entering }] of descending) {
    // Counted from the end, so that the last survivors are exactly none.
    const rest = later + leaving - entering
    const survivors = Math.abs(rest) < ROUNDING_SHARE * total ? 0 : rest
    sets.push({ time, events, survivors, atRisk: survivors + events })
    later = survivors + events
  }
  return sets.reverse()
}
