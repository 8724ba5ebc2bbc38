import { cite } from './citations.ts'
import { assumption, published } from './source.ts'

/** Embryo slope. Published clownfish durations lie within about one degree, so their own slope is unknown. */
export const embryoQ10 = assumption(
  2.5,
  `between 2.17, the slope from 22 to 32 °C of log10 D = 7.10 + 0.608 log10 diameter - 4.09 log10(T + 26) for pelagic eggs (${cite.paulyPullin1988}), and 2.83 for larvae of A. melanopus (${cite.greenFisher2004})`,
)

/** Standard deviation of ln(embryoQ10) that widens the range of a duration away from its reference temperature. */
export const embryoQ10LogSpread = assumption(
  0.2,
  'two standard deviations reach from about 1.7 to 3.7, past both slopes that the default lies between',
)

const reproductionStops = `reproduction declines at 30.0 °C and stops at 31.5 °C: ${cite.miller2015}`

/** As measured in A. melanopus; 31 is the last whole degree before its reproduction stops. */
export const notBeyond31Melanopus = published(31, reproductionStops)
export const notBeyond31 = assumption(31, `A. melanopus, ${reproductionStops}; borrowed`)

/** 0.12 between and 0.05 within make the 13 % that published clownfish durations scatter by. */
export const durationSpread = {
  spreadBetweenPairs: assumption(
    0.12,
    'what is left of the 13 % between published clownfish studies after 0.05 within a pair',
  ),
  spreadWithinPair: assumption(0.05, 'clutches of one pair at one temperature rarely differ by more than a night'),
}

const larvalSpread = {
  spreadBetweenPairs: assumption(0.15, 'rooms and diets differ: 8 to 12.3 days printed for A. melanopus alone'),
  spreadWithinPair: assumption(
    0.07,
    `9 ± 0.6 days is 7 %, whether deviation or error not stated: ${cite.greenFisher2004}; taken as the spread of batches`,
  ),
}

/** Slope and limits of larval duration, measured in A. melanopus and borrowed by the rest. */
export const larvalThermal = {
  q10: assumption(
    2.83,
    `(12.3 / 9)^(10 / 3) from A. melanopus at 25 and 28 °C (${cite.greenFisher2004}), borrowed for other species`,
  ),
  notBeyondC: notBeyond31,
  ...larvalSpread,
}

/** Standard deviation of ln(q10) of larval duration: the two published means alone give 0.25. */
export const larvalQ10LogSpread = assumption(
  0.25,
  `errors of 0.3 of 12.3 and 0.6 of 9 days, taken as deviations of the means, over 3 °C: ${cite.greenFisher2004}`,
)
