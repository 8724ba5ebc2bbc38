import type { HandOver } from '@fryward/shared'

type Sign = HandOver['signs'][number]
type Coming = HandOver['coming'][number]
type Worry = HandOver['worries'][number]
export type Undone = HandOver['notDone'][number]
export type Loss = HandOver['losses'][number]
export type Watch =
  | { kind: 'hatch'; of: Coming }
  | { kind: 'sign'; of: Sign }
  | { kind: 'worry'; of: Worry }
  | { kind: 'undone'; of: Undone }
  | { kind: 'loss'; of: Loss }

/** From here on a hatch tonight cannot wait for anything else on the page. from memory */
const pressingProbability = 0.5

/** Signs after which animals or a whole culture may be gone by the next round. from memory */
const graveSigns: ReadonlySet<string> = new Set(['gasping', 'spots_or_wounds', 'ciliates', 'bad_smell', 'sinking'])

const newest = <T extends { at: string }>(some: T[]): T | undefined =>
  some.toSorted((a, b) => b.at.localeCompare(a.at))[0]

const likeliest = (nights: Coming[]): Coming | undefined => nights.toSorted((a, b) => b.probability - a.probability)[0]

/** Larvae live from feed to feed: what was left undone for them comes before what was left undone elsewhere. */
const isForLarvae = ({ subject }: Undone) => subject.kind === 'larval_batch'

/**
 * The one thing to watch: a hatch that will likely not wait, else a grave sign, the newest open worry, what was not done
 * for larvae, the most that died, the likeliest hatch, any sign of trouble, anything not done. Undefined when there is
 * nothing of all that: then nothing stands out.
 */
export function whatToWatch(handOver: HandOver, today: string): Watch | undefined {
  const { coming, signs, worries, notDone, losses } = handOver
  const tonight = likeliest(coming.filter((night) => night.date === today))
  if (tonight && tonight.probability >= pressingProbability) return { kind: 'hatch', of: tonight }
  const grave = newest(signs.filter((one) => one.signs.some((sign) => graveSigns.has(sign))))
  if (grave) return { kind: 'sign', of: grave }
  const worry = newest(worries)
  if (worry) return { kind: 'worry', of: worry }
  const unfed = notDone.find(isForLarvae)
  if (unfed) return { kind: 'undone', of: unfed }
  const [loss] = losses
  if (loss) return { kind: 'loss', of: loss }
  const hatch = likeliest(coming)
  if (hatch) return { kind: 'hatch', of: hatch }
  const sign = newest(signs)
  if (sign) return { kind: 'sign', of: sign }
  const [undone] = notDone
  return undone && { kind: 'undone', of: undone }
}
