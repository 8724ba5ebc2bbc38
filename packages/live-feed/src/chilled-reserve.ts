import { assertInRange } from './check-input.ts'

/** Half alive after 14 days at 4 C: Assavaaree, Hagiwara, Ide, Maruyama & Lubzens 2001, Aquac. Res. 32:29-39. */
const HALF_LIFE_DAYS = 14

/** Held at 20,000 per mL, back to growth after 4 days at 20 C: same source. */
export const CHILLED_STORE = { temperatureC: 4, densityPerMl: 20_000, recoveryDays: 4 } as const

/**
 * Share of B. plicatilis still alive after so many days at 4 C: half after 14 days, and the same share lost each day
 * in between (that shape is an assumption; the source gives the one point). Beyond 14 days it is extrapolated. SS
 * strains die most and should not be counted on.
 * @throws ArgumentError when ageDays is outside 0 to 60 days.
 */
export function chilledReserve({ ageDays }: { ageDays: number }): {
  shareAlive: number
  isExtrapolated: boolean
  recoveryDays: number
} {
  assertInRange('ageDays', ageDays, { min: 0, max: 60, unit: 'days' })
  return {
    shareAlive: 0.5 ** (ageDays / HALF_LIFE_DAYS),
    isExtrapolated: ageDays > HALF_LIFE_DAYS,
    recoveryDays: CHILLED_STORE.recoveryDays,
  }
}
