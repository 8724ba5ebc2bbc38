import { cite } from './citations.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, published } from './source.ts'

/**
 * From the crown to the tip of the tail by days after birth: 11 mm at birth (from memory), 63.2 at nine weeks (Lin et al. 2008),
 * then 0.71 mm a day to 124 days (H. kuda: Choo & Liew 2006).
 */
const middle = [
  { ageDays: 0, lengthMm: 11 },
  { ageDays: 63, lengthMm: 63.2 },
  { ageDays: 124, lengthMm: 106 },
]
const scaled = (by: number) => middle.map(({ ageDays, lengthMm }) => ({ ageDays, lengthMm: lengthMm * by }))

export const seahorseGrowth: SpeciesProfile['growth'] = {
  // A third less and more holds twice the deviation of 0.52 in 6.32 cm, and other warmth than 28 C besides.
  lengths: assumption(
    { slow: scaled(2 / 3), middle, fast: scaled(4 / 3) },
    `6.32 ± 0.52 cm at nine weeks and 28 °C: ${cite.lin2008}; 0.71 mm a day after that, H. kuda: ${cite.chooLiew2006}; 11 mm at birth from memory, straight between them; a third less and more is chosen`,
  ),
  weight: published(
    { weightG: 0.0034, atMm: 10, exponent: 2.5535 },
    `W = 0.0034 L^2.5535, g and cm, r2 0.99: ${cite.lin2008}`,
  ),
}
