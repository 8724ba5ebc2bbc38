import type { HandOver } from '@fryward/shared'

type Sign = HandOver['signs'][number]
type Coming = HandOver['coming'][number]
type Worry = HandOver['worries'][number]
export type Watch = { kind: 'hatch'; of: Coming } | { kind: 'sign'; of: Sign } | { kind: 'worry'; of: Worry }

/** From here on a hatch tonight cannot wait for anything else on the page. from memory */
const pressingProbability = 0.5

/** Signs after which animals or a whole culture may be gone by the next round. from memory */
const graveSigns: ReadonlySet<string> = new Set(['gasping', 'spots_or_wounds', 'ciliates', 'bad_smell', 'sinking'])

const newest = <T extends { at: string }>(some: T[]): T | undefined =>
  some.toSorted((a, b) => b.at.localeCompare(a.at))[0]

const likeliest = (nights: Coming[]): Coming | undefined => nights.toSorted((a, b) => b.probability - a.probability)[0]

/**
 * The one thing to watch: a hatch that will likely not wait, else a grave sign, else the newest open worry, else the
 * likeliest hatch, else any sign of trouble; undefined when nothing stands out.
 */
export function whatToWatch(handOver: HandOver, today: string): Watch | undefined {
  const tonight = likeliest(handOver.coming.filter((night) => night.date === today))
  if (tonight && tonight.probability >= pressingProbability) return { kind: 'hatch', of: tonight }
  const grave = newest(handOver.signs.filter((one) => one.signs.some((sign) => graveSigns.has(sign))))
  if (grave) return { kind: 'sign', of: grave }
  const worry = newest(handOver.worries)
  if (worry) return { kind: 'worry', of: worry }
  const hatch = likeliest(handOver.coming)
  if (hatch) return { kind: 'hatch', of: hatch }
  const sign = newest(handOver.signs)
  return sign && { kind: 'sign', of: sign }
}
