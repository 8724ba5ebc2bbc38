import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'

/** Two-sided Student deviate: the t with `level` of the distribution inside +-t, through the beta quantile. */
export function studentDeviate(level: number, degreesOfFreedom: number): number {
  const share = betaQuantile(level, 0.5, degreesOfFreedom / 2)
  return Math.sqrt((degreesOfFreedom * share) / (1 - share))
}

/** The same of a normal distribution, to which Student's comes with many degrees of freedom. */
export const normalDeviate = (level: number): number => studentDeviate(level, 1e6)
