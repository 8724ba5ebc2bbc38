import { ArgumentError } from '@fryward/survival'
import { assertInRange, assertWholeNumber } from './check-input.ts'

/** One crash in a hundred culture days, held as firmly as a hundred days' experience; common practice. */
export const CRASH_PRIOR = { crashes: 1, cultureDays: 100 } as const

/**
 * Chance per day that a culture crashes, from the room's own record over the prior: (prior crashes + crashes) / (prior
 * days + days), the mean of a gamma posterior.
 * @throws ArgumentError when crashes is not a whole number from 0 or cultureDays is negative or 0 with crashes seen.
 */
export function crashHazard({ crashes, cultureDays }: { crashes: number; cultureDays: number }): number {
  assertWholeNumber('crashes', crashes)
  assertInRange('cultureDays', cultureDays, { min: 0, unit: 'days' })
  if (crashes > 0 && cultureDays === 0) {
    throw new ArgumentError({ argument: 'cultureDays', value: 0, allowed: 'above 0 when a crash was seen' })
  }
  return (CRASH_PRIOR.crashes + crashes) / (CRASH_PRIOR.cultureDays + cultureDays)
}
