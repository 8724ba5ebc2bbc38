import { sayMoment } from '@/base/dates/say.ts'
import { formatNumber } from '@/base/quantities/format-number.ts'
import type { HeldBand, PreyCount } from './prey-chart.ts'

const words = { prey_rotifers: 'rotifers', prey_artemia: 'Artemia' } as const

export const sayPreyKind = (of: PreyCount['of']): string =>
  of === 'prey_artemia' || of === 'prey_rotifers' ? words[of] : of

/** The last count of rotifers (else of what was counted) against the band: "15 rotifers per mL, 07:07: above the 5 to 15 to hold." */
export function sayPrey(
  counts: PreyCount[],
  held: HeldBand | undefined,
  { now, timeZone }: { now: Date; timeZone: string },
): string {
  const last = counts.findLast((count) => count.of === 'prey_rotifers') ?? counts.at(-1)
  if (!last) return 'Not counted yet.'
  const counted = `${formatNumber(last.perMl)} ${sayPreyKind(last.of)} per mL, ${sayMoment(last.at, now, timeZone)}`
  if (!held || last.of !== 'prey_rotifers') return `${counted}.`
  const band = `the ${formatNumber(held.lowest)} to ${formatNumber(held.most)} to hold`
  const where = last.perMl < held.lowest ? 'under' : last.perMl > held.most ? 'above' : 'within'
  return `${counted}: ${where} ${band}.`
}
