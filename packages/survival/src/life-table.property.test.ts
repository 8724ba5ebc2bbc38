import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kaplanMeier } from './kaplan-meier.ts'
import type { LedgerEntry } from './ledger.ts'
import { lifeTable } from './life-table.ts'
import { observationsFromBook } from './observations-from-book.ts'
import { stageCounts } from './stage-counts.ts'

const movement: fc.Arbitrary<LedgerEntry> = fc.record({
  day: fc.integer({ min: 0, max: 30 }),
  kind: fc.constantFrom('loss', 'movedIn', 'movedOut', 'placed', 'culled'),
  animals: fc.integer({ min: 0, max: 6 }),
})
const laterCount: fc.Arbitrary<LedgerEntry> = fc.record({
  day: fc.integer({ min: 1, max: 30 }),
  kind: fc.constant('count'),
  animals: fc.integer({ min: 0, max: 260 }),
  // Later counts may be too low for what still leaves, which only an estimate may be.
  standardError: fc.constant(12),
})
/** A first count that is always enough, so that every book is possible. */
const book = fc
  .tuple(
    fc.integer({ min: 150, max: 250 }),
    fc.array(movement, { maxLength: 12 }),
    fc.uniqueArray(laterCount, { maxLength: 4, selector: ({ day }) => day }),
  )
  .map(([animals, movements, counts]): LedgerEntry[] => [
    { day: 0, kind: 'count', animals, standardError: 9 },
    ...movements,
    ...counts,
  ])

describe('a book', () => {
  test('conserves animals in every row and in all', () => {
    fc.assert(
      fc.property(book, (entries) => {
        const { rows, totals, atStart, atEnd } = lifeTable({ entries })
        for (const row of rows) {
          const came = row.atStart + row.movedIn + row.found
          const went = row.movedOut + row.placed + row.culled + row.lossesSeen + row.lossesUnseen
          expect(came).toBeCloseTo(went + row.atEnd, 9)
          expect(row.lossesUnseen).toBeGreaterThanOrEqual(0)
          expect(row.found).toBeGreaterThanOrEqual(0)
        }
        const went = totals.movedOut + totals.placed + totals.culled + totals.lossesSeen + totals.lossesUnseen
        expect(atStart + totals.movedIn + totals.found).toBeCloseTo(went + atEnd, 9)
      }),
    )
  })

  test('gives shares between 0 and 1 inside their intervals, whatever order it is written in', () => {
    fc.assert(
      fc.property(book, (entries) => {
        const table = lifeTable({ entries })
        expect(lifeTable({ entries: [...entries].reverse() }).rows.map(({ survived }) => survived)).toEqual(
          table.rows.map(({ survived }) => survived),
        )
        for (const { survived, survivedSinceStart } of table.rows) {
          for (const share of [survived, survivedSinceStart]) {
            if (share === null) continue
            expect(share.lower).toBeGreaterThanOrEqual(0)
            expect(share.lower).toBeLessThanOrEqual(share.share + 1e-12)
            expect(share.upper).toBeGreaterThanOrEqual(share.share - 1e-12)
            expect(share.upper).toBeLessThanOrEqual(1)
            expect(share.of).toBeGreaterThan(0)
          }
        }
      }),
    )
  })

  test('and its observations hold the same deaths and animals', () => {
    fc.assert(
      fc.property(book, (entries) => {
        const { totals, atStart } = lifeTable({ entries })
        const observations = observationsFromBook({ entries })
        const deaths = observations.reduce((sum, { event, weight = 1 }) => sum + (event ? weight : 0), 0)
        const animals = observations.reduce((sum, { weight = 1 }) => sum + weight, 0)
        expect(deaths).toBeCloseTo(totals.lossesSeen + totals.lossesUnseen, 6)
        expect(animals).toBeCloseTo(atStart + totals.movedIn + totals.found, 6)
        if (observations.length > 0) kaplanMeier(observations)
      }),
    )
  })
})

/** Seeded uniform numbers (mulberry32), so that the simulated rooms are the same in every run. */
function uniforms(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

describe('the 95 % interval of a simulated batch', () => {
  const uniform = uniforms(20_240)
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  const survivors = (animals: number, share: number) =>
    Array.from({ length: animals }, uniform).filter((value) => value < share).length
  const estimate = (animals: number, relativeError: number) => ({
    animals: animals * (1 + relativeError * normal()),
    standardError: animals * relativeError,
  })
  const rooms = 1000

  test.each([
    ['head counts', 0],
    ['counts good to 8 %', 0.08],
  ])('holds the true share since hatching in about 95 of 100 rooms, with %s', (_, relativeError) => {
    const held = Array.from({ length: rooms }, () => {
      const hatched = 150 + Math.floor(200 * uniform())
      const atDay5 = survivors(hatched, 0.6)
      const settled = survivors(atDay5, 0.7)
      const stages = [hatched, atDay5, settled].map((animals, index) => ({
        stage: `stage ${index}`,
        ...(relativeError === 0 ? { animals } : estimate(animals, relativeError)),
      }))
      const share = stageCounts({ stages }).stages[2]?.fromFirst
      return share !== undefined && share !== null && share.lower <= 0.42 && share.upper >= 0.42
    }).filter((isHeld) => isHeld).length
    // Four standard errors of 1,000 coin throws at 0.95 are 0.028.
    expect(held / rooms).toBeGreaterThan(0.922)
    expect(held / rooms).toBeLessThan(0.978)
  })

  test('holds the true share in about 95 of 100 life tables, with fish moved out and in on the way', () => {
    const dailySurvival = 0.98
    const days = 30
    const held = Array.from({ length: rooms }, () => {
      const entries: LedgerEntry[] = [{ day: 0, kind: 'count', animals: 300 }]
      let animals = 300
      for (let day = 1; day <= days; day += 1) {
        const alive = survivors(animals, dailySurvival)
        // Half of the deaths are seen; the rest show at the next count.
        entries.push({ day, kind: 'loss', animals: Math.floor((animals - alive) / 2) })
        animals = alive
        if (day === 7 || day === 19) {
          entries.push({ day, kind: 'placed', animals: 40 })
          animals -= 40
        }
        if (day === 14) {
          entries.push({ day, kind: 'movedIn', animals: 30 })
          animals += 30
        }
        if (day % 10 === 0) entries.push({ day, kind: 'count', animals })
      }
      const share = lifeTable({ entries }).rows.at(-1)?.survivedSinceStart
      const truth = dailySurvival ** days
      return share !== undefined && share !== null && share.lower <= truth && share.upper >= truth
    }).filter((isHeld) => isHeld).length
    expect(held / rooms).toBeGreaterThan(0.922)
    expect(held / rooms).toBeLessThan(0.978)
  })
})
