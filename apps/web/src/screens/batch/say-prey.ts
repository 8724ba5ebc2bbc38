import { sayMoment, sayNumber, type Voice } from '@fryward/words'
import type { HeldBand, PreyCount } from './prey-chart.ts'

const words = { prey_rotifers: 'rotifers', prey_artemia: 'Artemia' } as const

export const sayPreyKind = (of: PreyCount['of']): string =>
  of === 'prey_artemia' || of === 'prey_rotifers' ? words[of] : of

/** The last count of rotifers (else of what was counted) against the band: "15 rotifers per mL, 07:07: above the 5 to 15 to hold." */
export function sayPrey(
  counts: PreyCount[],
  held: HeldBand | undefined,
  { now, voice }: { now: Date; voice: Voice },
): string {
  const last = counts.findLast((count) => count.of === 'prey_rotifers') ?? counts.at(-1)
  if (!last) return 'Not counted yet.'
  const counted = `${sayNumber(last.perMl, voice)} ${sayPreyKind(last.of)} per mL, ${sayMoment(last.at, now, voice)}`
  if (!held || last.of !== 'prey_rotifers') return `${counted}.`
  const band = `the ${sayNumber(held.lowest, voice)} to ${sayNumber(held.most, voice)} to hold`
  const where = last.perMl < held.lowest ? 'under' : last.perMl > held.most ? 'above' : 'within'
  return `${counted}: ${where} ${band}.`
}
