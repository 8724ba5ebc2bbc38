import type { CountData } from '@fryward/shared'

/** The mean of the times the same heads were counted. */
export const headsOf = ({ animals }: Pick<CountData, 'animals'>): number =>
  animals.reduce((sum, heads) => sum + heads, 0) / animals.length
