import { sayNumber } from '../numbers/say-number.ts'
import type { NumberVoice } from '../voice.ts'

/** Pairs that everybody knows, by how inbred their young are (Wright 1922, Am. Nat. 56:330-338), closest first. */
const known = [
  { from: 0.25, like: 'brother and sister, or parent and child' },
  { from: 0.125, like: 'half brother and half sister' },
  { from: 0.0625, like: 'first cousins' },
] as const

/** How inbred young are, in figures and beside a pair that everybody knows: "25% inbred, as of brother and sister". */
export function sayInbreeding(inbreeding: number, voice: NumberVoice): string {
  if (inbreeding === 0) return 'not inbred, as far as is known'
  const percent = `${sayNumber(inbreeding * 100, voice)}% inbred`
  const like = known.find(({ from }) => inbreeding >= from)
  if (!like) return `${percent}, less than of first cousins`
  return inbreeding === like.from ? `${percent}, as of ${like.like}` : `${percent}, more than of ${like.like}`
}
