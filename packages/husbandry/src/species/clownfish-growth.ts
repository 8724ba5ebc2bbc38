import type { SpeciesProfile } from './schema.ts'
import { assumption, published } from './source.ts'

/**
 * Total length by days after hatching: 4.3 mm at hatching and 13.0 at 25 days (Cheng et al. 2015, A. ocellaris), 18.9 at 40
 * (Raheem et al., black A. ocellaris), 30-40 at two to four months (Sarvi & Pourmozaffar, A. clarkii), 49.6 at 180 (Cheng,
 * Yeh & Ho 2019, A. clarkii).
 */
const middle = [
  { ageDays: 0, lengthMm: 4.3 },
  { ageDays: 25, lengthMm: 13 },
  { ageDays: 40, lengthMm: 18.9 },
  { ageDays: 90, lengthMm: 35 },
  { ageDays: 180, lengthMm: 49.6 },
]

/**
 * The fastest known: 5 mm at hatching (Raheem et al., black A. ocellaris), 18.8 at a month and 37.9 at 70 days (A. melanopus,
 * J. Aquaculture Korea, 31 Dec 2007), 60 at 180 (49.6 and its standard deviation of 10.2: Cheng, Yeh & Ho 2019).
 */
const fast = [
  { ageDays: 0, lengthMm: 5 },
  { ageDays: 30, lengthMm: 18.8 },
  { ageDays: 70, lengthMm: 37.9 },
  { ageDays: 180, lengthMm: 60 },
]

/**
 * The slowest: 3.2 mm at hatching and 16.6 at 59 days (A. perideraion, J. Fish. Soc. Taiwan 2008), 11 at 30 (P. biaculeatus, MSc
 * thesis, NTOU 2016), 25 at eight months (from memory).
 */
const slow = [
  { ageDays: 0, lengthMm: 3.2 },
  { ageDays: 30, lengthMm: 11 },
  { ageDays: 59, lengthMm: 16.6 },
  { ageDays: 240, lengthMm: 25 },
]

// From the two ends of that sample: 2.9; between them 23 mm makes 0.29 g, where 0.27 was weighed (Pietoyo et al. 2020-21).
const weight = { weightG: 0.1, atMm: 16, exponent: Math.log(1.75 / 0.1) / Math.log(43 / 16) }

const lengthSource =
  'lengths at known ages: Cheng et al. 2015 and Raheem et al. (A. ocellaris), Sarvi & Pourmozaffar and Cheng, Yeh & Ho 2019 (A. clarkii), straight between them'
const weightSource =
  '0.1 g at 16 mm and 1.75 g at 43 mm, A. ocellaris juveniles (Iovino, Knorr & Walsh, WAS abstract 42193), as a power of length'

/** How young clownfish grow, as lengths that were published at known ages. */
export const clownfishGrowth: SpeciesProfile['growth'] = {
  lengths: published({ slow, middle, fast }, lengthSource),
  weight: published(weight, weightSource),
}

/** The same where nobody has measured a species that is built much like them. */
export const asClownfishGrow: SpeciesProfile['growth'] = {
  lengths: assumption({ slow, middle, fast }, `as clownfish grow; ${lengthSource}`),
  weight: assumption(weight, `as clownfish weigh; ${weightSource}`),
}
