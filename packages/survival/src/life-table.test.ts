import { describe, expect, test } from 'vitest'
import { kaplanMeier } from './kaplan-meier.ts'
import type { LedgerEntry } from './ledger.ts'
import { lifeTable } from './life-table.ts'
import { observationsFromBook } from './observations-from-book.ts'

const book: LedgerEntry[] = [
  { day: 0, kind: 'count', animals: 300 },
  { day: 3, kind: 'loss', animals: 12 },
  { day: 5, kind: 'count', animals: 220 },
  { day: 10, kind: 'movedOut', animals: 50 },
  { day: 12, kind: 'loss', animals: 3 },
  { day: 20, kind: 'count', animals: 150 },
  { day: 25, kind: 'movedIn', animals: 10 },
  { day: 30, kind: 'placed', animals: 60 },
  { day: 31, kind: 'culled', animals: 2 },
  { day: 40, kind: 'count', animals: 95 },
  { day: 44, kind: 'loss', animals: 1 },
]

describe('lifeTable', () => {
  test('tells the dead that were seen from those that only a count shows', () => {
    const { rows } = lifeTable({ entries: book })
    expect(rows.map(({ deaths, lossesSeen, lossesUnseen }) => [deaths, lossesSeen, lossesUnseen])).toEqual([
      [80, 12, 68],
      [20, 3, 17],
      [3, 0, 3],
      [1, 1, 0],
    ])
    expect(rows[3]).toMatchObject({ isCounted: false, atEnd: 94, toDay: 44 })
  })

  test('weighs who came and left by the days they were there', () => {
    const { rows } = lifeTable({ entries: book })
    // 150, less 60 for 10 of 20 days, less 2 for 9 of 20, and 10 more for 15 of 20 days, but the dead among them whole.
    const atRisk = 150 - 30 - 0.9 + 7.5 + (3 * 2.5) / 98
    expect(rows[2]?.atRisk).toBeCloseTo(atRisk, 10)
    expect(rows[2]?.survived?.share).toBeCloseTo(1 - 3 / atRisk, 10)
  })

  test('does not call a batch dead when those who came last live on', () => {
    const { rows } = lifeTable({
      entries: [
        { day: 0, kind: 'count', animals: 0 },
        { day: 9, kind: 'movedIn', animals: 10 },
        { day: 10, kind: 'loss', animals: 4 },
        { day: 10, kind: 'count', animals: 6 },
      ],
    })
    // Six lived for a tenth of the time that four died in.
    expect(rows[0]?.atRisk).toBeCloseTo(4.6, 10)
    expect(rows[0]?.survived?.share).toBeCloseTo(0.6 / 4.6, 10)
  })

  test('multiplies the shares since the start', () => {
    const { rows } = lifeTable({ entries: book })
    const product = rows.reduce((share, row) => share * (row.survived?.share ?? 1), 1)
    expect(rows.at(-1)?.survivedSinceStart?.share).toBeCloseTo(product, 12)
  })

  test('keeps a count above the book and shows the surplus, not negative deaths', () => {
    const { rows, totals } = lifeTable({
      entries: [
        { day: 0, kind: 'count', animals: 100, standardError: 15 },
        { day: 4, kind: 'loss', animals: 2 },
        { day: 8, kind: 'count', animals: 110 },
      ],
    })
    expect(rows[0]).toMatchObject({ found: 12, deaths: 2, atEnd: 110, atRisk: 112 })
    expect(totals.found).toBe(12)
  })

  test('lets more go than were estimated, who then were there all the same', () => {
    // Ten, give or take three: twelve were placed, so twelve they were, and none is left or has died.
    const entries: LedgerEntry[] = [
      { day: 0, kind: 'count', animals: 10, standardError: 3 },
      { day: 2, kind: 'placed', animals: 12 },
    ]
    expect(lifeTable({ entries }).rows[0]).toMatchObject({ found: 2, deaths: 0, atEnd: 0, isCounted: false })
  })

  test('is as sure of heads that were counted as an exact interval is', () => {
    const method = (animals: number) =>
      lifeTable({
        entries: [
          { day: 0, kind: 'count', animals },
          { day: 4, kind: 'loss', animals: 2 },
          { day: 8, kind: 'count', animals: animals - 2 },
        ],
      }).rows[0]?.survived?.method
    // Exact to thirty animals, Wilson's beyond: common practice.
    expect([30, 31].map(method)).toEqual(['Clopper-Pearson', 'Wilson'])
  })

  test('lets an error of the middle count cancel in the share since the start', () => {
    const withMiddleError = (standardError: number) =>
      lifeTable({
        entries: [
          { day: 0, kind: 'count', animals: 400 },
          { day: 5, kind: 'count', animals: 250, standardError },
          { day: 9, kind: 'count', animals: 200 },
        ],
      }).rows
    const [exact, loose] = [withMiddleError(0), withMiddleError(40)]
    expect(loose[1]?.survivedSinceStart?.lower).toBeCloseTo(exact[1]?.survivedSinceStart?.lower ?? 0, 10)
    expect(loose[0]?.survived?.lower).toBeLessThan(exact[0]?.survived?.lower ?? 0)
    expect(loose[1]?.survived?.lower).toBeLessThan(exact[1]?.survived?.lower ?? 0)
  })

  test('takes counting errors of ten in a hundred as such where the animals are many', () => {
    // Half are left. On the log scale errors add as squares (delta method): of both counts, exp(-1.96 sqrt(0.02)) of it.
    const counted = lifeTable({
      entries: [
        { day: 0, kind: 'count', animals: 4e6, standardError: 4e5 },
        { day: 9, kind: 'count', animals: 2e6, standardError: 2e5 },
      ],
    }).rows[0]
    // Of one million give or take a tenth half a million died: as many are left, give or take a fifth, of which half cancels.
    const bySight = lifeTable({
      entries: [
        { day: 0, kind: 'count', animals: 1e6, standardError: 1e5 },
        { day: 5, kind: 'loss', animals: 5e5 },
      ],
    }).rows[0]
    for (const share of [counted?.survived, counted?.survivedSinceStart])
      expect([share?.lower, share?.upper]).toEqual([expect.closeTo(0.379, 3), expect.closeTo(0.66, 3)])
    for (const share of [bySight?.survived, bySight?.survivedSinceStart])
      expect([share?.lower, share?.upper]).toEqual([expect.closeTo(0.411, 3), expect.closeTo(0.608, 3)])
  })

  test('shows a group that died out with an upper end above 0, and one that was never there with no share', () => {
    const died = lifeTable({
      entries: [
        { day: 0, kind: 'count', animals: 40 },
        { day: 2, kind: 'loss', animals: 40 },
        { day: 2, kind: 'count', animals: 0 },
      ],
    })
    expect(died.rows[0]?.survived).toMatchObject({ share: 0, lower: 0, of: 40 })
    expect(died.rows[0]?.survived?.upper).toBeGreaterThan(0.01)
    const empty = lifeTable({ entries: [{ day: 0, kind: 'count', animals: 0 }] })
    expect(empty.rows[0]).toMatchObject({ survived: null, survivedSinceStart: null, deaths: 0 })
  })

  const start: LedgerEntry = { day: 5, kind: 'count', animals: 10 }
  test.each<[LedgerEntry[], RegExp]>([
    [[], /entries is no count; allowed: at least one count/],
    [[{ day: 1, kind: 'loss', animals: 1 }], /entries is no count/],
    [[start, { day: 4, kind: 'loss', animals: 1 }], /day is 4; allowed: from the first count, day 5/],
    [[start, { ...start, animals: 9 }], /day is 5; allowed: one count a day/],
    [[start, { day: 6, kind: 'loss', animals: -1 }], /entries\[1\]\.animals is -1/],
    [[start, { day: 6, kind: 'loss', animals: 1.5 }], /entries\[1\]\.animals is 1.5/],
    [[{ ...start, day: Number.NaN }], /entries\[0\]\.day is NaN/],
    [
      [start, { day: 6, kind: 'sold' as 'placed', animals: 1 }],
      /entries\[1\]\.kind is sold; allowed: count, loss, movedIn/,
    ],
    [[{ ...start, standardError: -1 }], /entries\[0\]\.standardError is -1/],
    [[{ ...start, animals: -1, standardError: 1 }], /entries\[0\]\.animals is -1; allowed: a finite number from 0/],
    [
      [start, { day: 7, kind: 'placed', animals: 11 }],
      /entries up to day 7 is 1 more gone than there were; allowed: no more than were counted on day 5/,
    ],
  ])('refuses %o', (entries, message) => {
    expect(() => lifeTable({ entries })).toThrow(message)
  })
})

describe('observationsFromBook', () => {
  test('gives the curve of the animals themselves when every death was seen', () => {
    const curve = kaplanMeier(
      observationsFromBook({
        entries: [
          { day: 0, kind: 'count', animals: 10 },
          { day: 3, kind: 'loss', animals: 2 },
          { day: 6, kind: 'placed', animals: 4 },
          { day: 8, kind: 'loss', animals: 1 },
          { day: 9, kind: 'count', animals: 3 },
        ],
      }),
    )
    expect(curve.steps.map(({ time, atRisk, events }) => [time, atRisk, events])).toEqual([
      [3, 10, 2],
      [8, 4, 1],
    ])
    expect(curve.steps[1]?.survival).toBeCloseTo(0.8 * 0.75, 12)
  })

  test('puts a death that only a count shows half-way since the count before', () => {
    const observations = observationsFromBook({
      entries: [
        { day: 10, kind: 'count', animals: 5 },
        { day: 20, kind: 'count', animals: 3 },
      ],
    })
    expect(observations).toEqual([
      { time: 15, event: true, weight: 2, enteredAt: 9.5 },
      { time: 20, event: false, weight: 3, enteredAt: 9.5 },
    ])
  })

  test('puts it half-way since they came, of those who came since, and takes who was there longest first', () => {
    const observations = observationsFromBook({
      entries: [
        { day: 5, kind: 'count', animals: 1 },
        { day: 8, kind: 'movedIn', animals: 5 },
        { day: 10, kind: 'count', animals: 3 },
      ],
    })
    expect(observations).toEqual([
      { time: 7.5, event: true, weight: 1, enteredAt: 4.5 },
      { time: 8.75, event: true, weight: 2, enteredAt: 7.5 },
      { time: 10, event: false, weight: 3, enteredAt: 7.5 },
    ])
  })

  test('takes whom a count finds beyond the book for there since the count before', () => {
    const observations = observationsFromBook({
      entries: [
        { day: 5, kind: 'count', animals: 4, standardError: 2 },
        { day: 9, kind: 'count', animals: 6 },
      ],
    })
    expect(observations).toEqual([
      { time: 9, event: false, weight: 4, enteredAt: 4.5 },
      { time: 9, event: false, weight: 2, enteredAt: 4.5 },
    ])
  })

  test('counts a death on the day that the animal came', () => {
    const observations = observationsFromBook({
      entries: [
        { day: 0, kind: 'count', animals: 0 },
        { day: 7, kind: 'movedIn', animals: 2 },
        { day: 7, kind: 'loss', animals: 1 },
      ],
    })
    expect(kaplanMeier(observations).steps).toMatchObject([{ time: 7, atRisk: 2, events: 1, survival: 0.5 }])
  })
})
