/**
 * Sixty invented cultures, six weeks each, thinned as advised: animals harvested against the best constant share in
 * hindsight, and against the trade's fifth a day. `npm run bench thinning [first seed] [cultures]`.
 */
import { atShare, thinCultures } from '../../packages/live-feed/dist/testing/keep-as-advised.js'
import { bestConstant, KEPT, keep, keptCulture } from '../../packages/live-feed/dist/testing/kept-cultures.js'

const CHOSEN_ON = 1
const HELD_OUT = 5001

const percent = (share) => `${(100 * share).toFixed(1)} %`

/** What a fifth a day gives from the first day on which a culture is ripe by its counts. */
function aFifth(culture) {
  let isRipe = false
  const { harvested } = keep(culture, ({ day, observations }) => {
    isRipe ||= day >= KEPT.firstAgeDays && (observations.at(-1)?.densityPerMl ?? 0) >= KEPT.firstPerMl
    return isRipe ? 0.2 : 0
  })
  return harvested / bestConstant(culture).harvested
}

function report(what, seeds, everyDays) {
  const cultures = seeds.map(keptCulture)
  const { ratios, underATwentieth, none, underFloor, most } = thinCultures(
    cultures,
    everyDays ? { every: () => everyDays } : {},
  )
  const fifths = cultures.map(aFifth).sort((a, b) => a - b)
  const worst = ratios.slice(0, Math.ceil(ratios.length / 10))
  const mean = worst.reduce((sum, ratio) => sum + ratio, 0) / worst.length
  console.log(
    `${what}: seeds ${seeds[0]}-${seeds.at(-1)}, rates learned ${everyDays ? `every ${everyDays} days` : 'as in a room'}`,
  )
  console.log(
    `  of the best constant share: median ${atShare(ratios, 0.5).toFixed(3)}, worst tenth ${atShare(ratios, 0.1).toFixed(3)} and below (their mean ${mean.toFixed(3)})`,
  )
  console.log(
    `  a fifth a day: median ${atShare(fifths, 0.5).toFixed(3)}, worst tenth ${atShare(fifths, 0.1).toFixed(3)}`,
  )
  console.log(
    `  days under a twentieth ${percent(underATwentieth)}, days with none ${percent(none)}, most taken ${percent(most)}, under the floor ${underFloor}`,
  )
}

export function run([first, cultures = '60']) {
  const from = (seed) => Array.from({ length: Number(cultures) }, (_, i) => seed + i)
  if (first !== undefined) return report('asked for', from(Number(first)))
  report('chosen on', from(CHOSEN_ON))
  report('held out', from(HELD_OUT))
  report('held out', from(HELD_OUT), 7)
  report('held out', from(HELD_OUT), 1)
}
