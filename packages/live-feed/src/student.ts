import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'

/** Two-sided Student deviate: the t with `level` of the distribution inside +-t, through the beta quantile. */
export function studentDeviate(level: number, degreesOfFreedom: number): number {
  const share = betaQuantile(level, 0.5, degreesOfFreedom / 2)
  return Math.sqrt((degreesOfFreedom * share) / (1 - share))
}
