import { assertLevel } from './argument-error.ts'
import { DEFAULT_LEVEL } from './intervals.ts'
import { bookOf, type LedgerEntry, type LedgerInterval } from './ledger.ts'
import { effectiveNumber, type Share, shareInterval } from './share-interval.ts'

export type LifeTableRow = Omit<LedgerInterval, 'entries'> & {
  /** Seen and unseen. */
  deaths: number
  /** Share that lived through this interval; null when nobody was at risk. */
  survived: Share | null
  /** Share alive since the first count, had nobody left; null when nobody was ever at risk. */
  survivedSinceStart: Share | null
}

export type LifeTable = {
  level: number
  rows: LifeTableRow[]
  totals: Record<'movedIn' | 'movedOut' | 'placed' | 'culled' | 'lossesSeen' | 'lossesUnseen' | 'found', number>
  atStart: number
  atEnd: number
}

/** How the log of an interval's share moves with one animal more in its opening and closing counts. */
function slopes({ atRisk, isCounted }: LedgerInterval, deaths: number): { opening: number; closing: number } {
  const survivors = atRisk - deaths
  if (survivors <= 0) return { opening: atRisk > 0 ? -1 / atRisk : 0, closing: 0 }
  if (isCounted) return { opening: -1 / atRisk, closing: 1 / survivors }
  // Without a closing count one animal more at the start is one more at the end too.
  return { opening: 1 / survivors - 1 / atRisk, closing: 0 }
}

/** Carries the product of shares, its Greenwood sum, and how far each count's error reaches into it. */
class RunningProduct {
  share = 1
  #greenwood = 0
  #fewest = Number.POSITIVE_INFINITY
  #countingVariance = 0
  #openSlope = 0

  /** Takes one interval in and returns the share since the start, or null when nobody was ever at risk. */
  take(interval: LedgerInterval, { deaths, level }: { deaths: number; level: number }): Share | null {
    const { atRisk, startError, endError } = interval
    const slope = slopes(interval, deaths)
    // This interval's opening count is the last one's closing count: one error, both slopes.
    this.#countingVariance += (startError * (this.#openSlope + slope.opening)) ** 2
    this.#openSlope = slope.closing
    if (atRisk > 0) {
      this.share *= 1 - deaths / atRisk
      this.#greenwood += deaths === 0 ? 0 : deaths / (atRisk * (atRisk - deaths))
      this.#fewest = Math.min(this.#fewest, atRisk)
    }
    const of = effectiveNumber({ share: this.share, greenwood: this.#greenwood, fewest: this.#fewest })
    if (!Number.isFinite(of)) return null
    const relativeError = Math.sqrt(this.#countingVariance + (endError * slope.closing) ** 2)
    return shareInterval({ share: this.share, of, relativeError, level })
  }
}

/**
 * Life table of a group from its book: counts with their errors, dead that were seen, and animals that came or left.
 * Between counts the actuarial method (Cutler & Ederer 1958, J. Chronic Dis. 8:699-712), with who came or left weighed
 * by the days they were there; moved, placed and culled are censored, not dead. Since the start: the product, with
 * Greenwood's variance as an effective number (Dorey & Korn 1987) and the counts' errors by the delta method.
 * A count above the book is kept, the surplus shown as `found`, never as negative deaths.
 * @throws ArgumentError for a missing first count, two counts on a day, a negative or fractional number, or an entry
 * before the first count.
 */
export function lifeTable({
  entries,
  level = DEFAULT_LEVEL,
}: {
  entries: readonly LedgerEntry[]
  level?: number
}): LifeTable {
  assertLevel(level)
  const book = bookOf(entries)
  const product = new RunningProduct()
  const rows = book.map((each): LifeTableRow => {
    const { entries: _, ...interval } = each
    const deaths = interval.lossesSeen + interval.lossesUnseen
    const { atRisk, startError, endError } = interval
    const slope = slopes(each, deaths)
    const relativeError = Math.hypot(startError * slope.opening, endError * slope.closing)
    return {
      ...interval,
      deaths,
      survived: atRisk > 0 ? shareInterval({ share: 1 - deaths / atRisk, of: atRisk, relativeError, level }) : null,
      survivedSinceStart: product.take(each, { deaths, level }),
    }
  })
  const total = (name: keyof LifeTable['totals']) => rows.reduce((sum, row) => sum + row[name], 0)
  return {
    level,
    rows,
    totals: {
      movedIn: total('movedIn'),
      movedOut: total('movedOut'),
      placed: total('placed'),
      culled: total('culled'),
      lossesSeen: total('lossesSeen'),
      lossesUnseen: total('lossesUnseen'),
      found: total('found'),
    },
    atStart: rows[0]!.atStart,
    atEnd: rows.at(-1)!.atEnd,
  }
}
