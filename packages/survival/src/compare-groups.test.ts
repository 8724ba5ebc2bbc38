import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareGroups } from './compare-groups.ts'
import type { Observation } from './observation.ts'

/** "6 6+ 7" is two deaths, at 6 and 7, and one last seen alive at 6; each is a cluster of its own. */
const each = (text: string): Observation[][] =>
  text.split(' ').map((word) => [{ time: Number.parseFloat(word), event: !word.endsWith('+') }])

// Freireich et al. 1963, Blood 21:699-716: weeks in remission, 6-MP and placebo.
const sixMp = each('6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+')
const placebo = each('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23')

describe('the trial of 6-MP', () => {
  const { conclusion, best, worst, byAnimal, byCluster, groups, hasFewDeaths } = compareGroups({
    groups: [sixMp, placebo],
    times: [0, 10, 20, 40],
  })

  test('shows that the two differ, and which did better', () => {
    expect([conclusion, best, worst, hasFewDeaths]).toEqual(['differ', 0, 1, false])
    // Log-rank 16.79, 9 deaths of 19.25 expected and 21 of 10.75: the trial as every textbook prints it.
    expect(byAnimal?.chiSquare).toBeCloseTo(16.79, 2)
    expect(byAnimal?.expected.map((number) => Number(number.toFixed(2)))).toEqual([19.25, 10.75])
    expect(byAnimal?.observed).toEqual([9, 21])
  })

  test('draws among more ways to deal them out than could be tried', () => {
    expect(byCluster).toMatchObject({ isExact: false, arrangements: 9999 })
    expect(byCluster?.pValue).toBeLessThan(0.002)
  })

  test('tells how many are still at risk', () => {
    expect(groups.map(({ atRisk }) => atRisk)).toEqual([
      [21, 15, 8, 0],
      [21, 8, 2, 0],
    ])
    expect(groups.map(({ curve }) => curve.median)).toEqual([23, 8])
  })
})

/** A clutch of 100 larvae of which so many die on day 5. */
const clutch = (dead: number): Observation[] => [
  { time: 5, event: true, weight: dead },
  { time: 20, event: false, weight: 100 - dead },
]

describe('clutches', () => {
  test('that are too few cannot show a difference, however sure single larvae seem', () => {
    const compared = compareGroups({
      groups: [
        [clutch(10), clutch(12), clutch(8)],
        [clutch(80), clutch(85), clutch(90)],
      ],
    })
    expect(compared.conclusion).toBe('too_few_clusters')
    // Three of six: 20 ways, and the two that split them as they were split.
    expect(compared.byCluster).toEqual({ pValue: 0.1, smallestPValue: 0.1, arrangements: 20, isExact: true })
    expect(compared.byAnimal?.pValue).toBeLessThan(1e-10)
  })

  test('that are enough and differ as groups show it', () => {
    const compared = compareGroups({
      groups: [
        [clutch(80), clutch(85), clutch(90), clutch(70)],
        [clutch(10), clutch(12), clutch(8), clutch(20)],
      ],
    })
    expect(compared).toMatchObject({ conclusion: 'differ', best: 1, worst: 0 })
    expect(compared.byCluster?.pValue).toBeCloseTo(2 / 70, 12)
  })

  test('that differ among themselves as much as the groups do show nothing but themselves', () => {
    const compared = compareGroups({
      groups: [
        [clutch(90), clutch(10), clutch(80), clutch(20)],
        [clutch(85), clutch(5), clutch(50), clutch(10)],
      ],
    })
    expect(compared.byAnimal?.pValue).toBeLessThan(0.05)
    expect(compared.conclusion).toBe('differ_by_animals_only')
  })

  test('that fared alike show no difference', () => {
    const groups = [
      [clutch(50), clutch(40), clutch(60), clutch(55)],
      [clutch(50), clutch(60), clutch(45), clutch(50)],
    ]
    expect(compareGroups({ groups })).toMatchObject({ conclusion: 'no_difference_shown', best: null, worst: null })
  })

  test('of one group, or that all lived, leave nothing to compare', () => {
    expect(compareGroups({ groups: [[clutch(5)]] })).toMatchObject({ conclusion: 'one_group', byAnimal: null })
    expect(compareGroups({ groups: [[clutch(0)], [clutch(0)]] }).conclusion).toBe('no_deaths')
  })

  test('with hardly a death are said to have few', () => {
    expect(compareGroups({ groups: [[clutch(2)], [clutch(3)]] }).hasFewDeaths).toBe(true)
    // Of two clutches alike each is expected half of the deaths, and five are enough (Cochran 1954).
    expect(compareGroups({ groups: [[clutch(4)], [clutch(5)]] }).hasFewDeaths).toBe(true)
    expect(compareGroups({ groups: [[clutch(4)], [clutch(6)]] }).hasFewDeaths).toBe(false)
  })

  test('differ from one in twenty on, which is as many as that can be', () => {
    // One clutch beside nineteen: twenty ways to choose it (Fisher 1935, The Design of Experiments, III).
    const nineteen = Array.from({ length: 19 }, () => clutch(10))
    expect(compareGroups({ groups: [[clutch(60)], nineteen] })).toMatchObject({
      conclusion: 'differ',
      byCluster: { pValue: 0.05, smallestPValue: 0.05, arrangements: 20 },
    })
  })

  test('of groups as large as each other may change places and show as much', () => {
    // 6! / (2! 2! 2!) is 90 ways, and three groups wholly apart can be named in 3! ways.
    const three = [clutch(10), clutch(50), clutch(90)].map((each) => [each, each])
    expect(compareGroups({ groups: three }).byCluster).toMatchObject({ pValue: 6 / 90, smallestPValue: 6 / 90 })
    const uneven = [
      [clutch(10), clutch(10)],
      [clutch(50), clutch(50)],
      [clutch(90), clutch(90), clutch(90)],
    ]
    expect(compareGroups({ groups: uneven }).byCluster?.smallestPValue).toBeCloseTo(2 / 210, 12)
  })

  test('that were gone before anybody died are neither best nor worst', () => {
    const gone: Observation[] = [{ time: 1, event: false, weight: 50 }]
    const four = (dead: number) => [dead, dead + 1, dead + 2, dead + 3].map(clutch)
    const compared = compareGroups({ groups: [[gone, gone], four(80), four(10)] })
    expect(compared).toMatchObject({ best: 2, worst: 1 })
    expect(compared.groups[0]?.deathsAgainstExpected).toBeNull()
  })

  test('are refused when empty', () => {
    expect(() => compareGroups({ groups: [[[]], [clutch(1)]] })).toThrow(/groups\[0\] is empty/)
  })
})

test('all ways to deal clusters out are as many as counting them one by one gives, whatever the order', () => {
  const dead = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 4 })
  fc.assert(
    fc.property(dead, dead, (a, b) => {
      const groups = [a.map(clutch), b.map(clutch)]
      const { byCluster } = compareGroups({ groups })
      const turned = compareGroups({ groups: [...groups].reverse() }).byCluster
      expect(turned?.pValue).toBeCloseTo(byCluster?.pValue ?? Number.NaN, 12)
      expect(byCluster?.pValue).toBeGreaterThanOrEqual(byCluster?.smallestPValue ?? 1)
      const n = a.length + b.length
      const subsets = Array.from({ length: 2 ** n }, (_, bits) => bits).filter(
        (bits) => bits.toString(2).replaceAll('0', '').length === a.length,
      )
      expect(byCluster?.arrangements).toBe(subsets.length)
    }),
    { numRuns: 60 },
  )
})

test('ways that are drawn are as often as far apart as all of them are', () => {
  // Clutches that die on one day are at risk alike, so that groups are the further apart the further their sums are.
  const dead = [12, 30, 25, 41, 8, 37, 22, 19, 33, 28, 45, 15, 38, 26, 50, 31, 44, 21]
  const sum = (numbers: readonly number[]) => numbers.reduce((all, each) => all + each, 0)
  const apart = (first: number) => Math.abs(first - sum(dead) / 2)
  const seen = apart(sum(dead.slice(0, 9)))
  let [ways, asFar] = [0, 0]
  const choose = (from: number, left: number, chosen: number): void => {
    if (left === 0) {
      ways += 1
      if (apart(chosen) >= seen) asFar += 1
      return
    }
    for (let next = from; next <= dead.length - left; next += 1) choose(next + 1, left - 1, chosen + dead[next]!)
  }
  choose(0, 9, 0)
  expect(ways).toBe(48_620)
  const groups = [dead.slice(0, 9).map(clutch), dead.slice(9).map(clutch)]
  const { byCluster } = compareGroups({ groups })
  expect(byCluster).toMatchObject({ isExact: false, smallestPValue: 1 / 10_000 })
  const share = asFar / ways
  // Four standard errors of 9,999 draws.
  expect(Math.abs((byCluster?.pValue ?? 1) - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / 9999))
})
