import type { Random } from '@fryward/live-feed'
import { findSpecies, type Source } from '../species/index.ts'
import { assumption, published } from '../species/source.ts'
import { type BatchLived, lossesUntilDay } from './batch-lived.ts'

type Share = { value: number; source: Source }

/** Larvae that live to metamorphosis, of those that hatched. */
const toMetamorphosis: Record<string, Share> = {
  'amphiprion-ocellaris': published(
    0.64,
    '64.47 % of A. ocellaris weaned from day 5: Murray et al. 2025, Fishes 10(9):461',
  ),
  'amphiprion-percula': published(0.655, '65.5 % at 900 lx: A. percula in brackish water, Chinese J. Oceanol. Limnol.'),
  'amphiprion-clarkii': published(0.63, '60-66 % over three first days of Artemia: A. clarkii, Aquacult. Int. 2016'),
  'elacatinus-figaro': published(0.08, '2-20 % to settlement, middle by ratio: Shei 2008'),
}
const ofClownfish = assumption(
  0.55,
  '55 % in A. sebae (Ajith Kumar et al. 2010, Indian J. Mar. Sci. 39:114-119), borrowed',
)
const ofOthers = assumption(0.3, 'between clownfish (about 0.6) and E. figaro (0.02-0.2)')

/** Batches of one's own that count as much as what is published. assumption */
const PUBLISHED_COUNTS_AS = 3
/** Spread of that share from batch to batch as log-odds, 0.15 either way at 0.64; it counts as much as that of so many. assumption */
const LOG_ODDS_SD = 0.65
const SPREAD_COUNTS_AS = 6

/** What the next batch may live through, as log-odds: Student's t with this middle, scale and degrees of freedom. */
export type SurvivalAhead = { middle: number; scale: number; freedom: number }

/** Share of hatched larvae that should live through their first days here: this room's own batches over what is published. */
export function survivalAhead(species: string, seen: readonly BatchLived[]): SurvivalAhead {
  const isClownfish = (findSpecies(species)?.scientificName ?? '').match(/^(Amphiprion|Premnas) /) !== null
  const prior = toMetamorphosis[species] ?? (isClownfish ? ofClownfish : ofOthers)
  const own = seen.filter((batch) => batch.species === species).map(logOddsLived)
  return learned(Math.log(prior.value / (1 - prior.value)), own)
}

/** Half an animal more of each, so that a batch of which all or none lived has log-odds too (Haldane 1956, Anscombe 1956). */
const logOddsLived = ({ lived, watched }: BatchLived): number => Math.log((lived + 0.5) / (watched - lived + 0.5))

/**
 * Mean and spread learned together: the normal-inverse-gamma update, whose prediction is Student's t (Gelman et al. 2013,
 * Bayesian Data Analysis, 3rd ed., section 3.3).
 */
function learned(prior: number, own: readonly number[]): SurvivalAhead {
  const n = own.length
  const sum = own.reduce((all, each) => all + each, 0)
  const weight = PUBLISHED_COUNTS_AS + n
  const freedom = SPREAD_COUNTS_AS + n
  const mean = n > 0 ? sum / n : prior
  const within = own.reduce((squares, each) => squares + (each - mean) ** 2, 0)
  const between = ((PUBLISHED_COUNTS_AS * n) / weight) * (mean - prior) ** 2
  const variance = (SPREAD_COUNTS_AS * LOG_ODDS_SD ** 2 + within + between) / freedom
  const middle = (PUBLISHED_COUNTS_AS * prior + sum) / weight
  return { middle, scale: Math.sqrt(variance * (1 + 1 / weight)), freedom }
}

/** As many lie under it as over it. */
export const medianSurvival = ({ middle }: SurvivalAhead): number => shareOf(middle)

/** Share of the hatched that lives through its first days, drawn; Student's t by Bailey 1994, Math. Comp. 62:779-781. */
export function drawSurvival({ middle, scale, freedom }: SurvivalAhead, random: Random): number {
  const radius = Math.sqrt(freedom * (random.uniform() ** (-2 / freedom) - 1))
  return shareOf(middle + scale * radius * Math.cos(2 * Math.PI * random.uniform()))
}

const shareOf = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds))

/** Share of the hatched that is left on a day of life, when `survival` of them live through their first days. */
export const shareLeft = (day: number, survival: number): number =>
  1 - (1 - survival) * Math.min(1, Math.max(0, day) / lossesUntilDay)
