import type { SurvivalStage } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { type Animal, aliveOn, daysFrom, type NaiveBrood, naiveBroods } from '../testing/naive-figures.ts'
import {
  atRisk,
  curveOf,
  dealtOut,
  expectedDeaths,
  logRankOfTwo,
  observedDeaths,
  shareOf,
} from '../testing/naive-formulas.ts'
import { raisedRoom } from '../testing/raised-rooms.ts'
import { reviewBroods } from './brood-review.ts'
import { compareBroods } from './compare-broods.ts'
import type { ReviewRoom } from './review-room.ts'

const rooms = Array.from({ length: 12 }, (_, seed) => raisedRoom(seed + 1))
const plus = (date: string, days: number) => new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10)

type Ends = { on: string | null; atLeast: number | null; atMost: number | null; status: SurvivalStage['status'] }
const nothing: Ends = { on: null, atLeast: null, atMost: null, status: 'not_yet' }
const exactly = (number: number, on: string | null, status: Ends['status'] = 'reached'): Ends => ({
  ...{ on, status, atLeast: number, atMost: number },
})

/** Every stage of a clutch by the animals of these rooms. */
function stagesOf(brood: NaiveBrood, { room, laidOn }: { room: ReviewRoom; laidOn: string }): Record<string, Ends> {
  const { bornOn, moved, placed, now } = brood
  const then = (on: string | null): Ends =>
    on === null || on > room.today ? nothing : { on, status: 'reached', ...aliveOn(brood, daysFrom(bornOn, on)) }
  const wayOf = now === 0 ? 'reached' : 'so_far'
  const turned: Ends = moved ? { on: null, status: 'reached', atLeast: moved.number, atMost: null } : nothing
  return {
    laid: exactly(brood.eggs, laidOn),
    hatched: exactly(brood.animals.length, bornOn),
    first_feed: then(brood.fedOn),
    day_5: then(plus(bornOn, 5)),
    metamorphosis: brood.turnedOn === null ? turned : then(brood.turnedOn),
    settled: moved ? exactly(moved.number, moved.on) : nothing,
    placed: placed.number > 0 ? exactly(placed.number, placed.on, wayOf) : nothing,
  }
}

type Share = ReturnType<typeof shareOf>
type Shares = Map<string, { fromStage: string; lost: number; share: Share; ofFirst: Share }>

/** Of each stage with a number of its own, of the one before it and of the eggs; who left alive was there for half of the way. */
function sharesOf(brood: NaiveBrood, stages: Record<string, Ends>): Shares {
  const known = Object.entries(stages).filter(
    ([stage, { atLeast, atMost, on }]) =>
      atLeast !== null && atLeast === atMost && !(stage === 'first_feed' && on === brood.bornOn),
  )
  const shares: Shares = new Map()
  let [ofEggs, greenwood, fewest] = [1, 0, Number.POSITIVE_INFINITY]
  for (const [index, [stage, to]] of known.entries()) {
    if (index === 0) continue
    const [fromStage, from] = known[index - 1]!
    const [leaving, lost] = lostBetween(brood, { from, to, isLast: stage === 'placed', fromStage })
    const of = from.atLeast! - leaving / 2
    const share = 1 - lost / of
    ofEggs *= share
    greenwood += lost / of / (of - lost)
    fewest = Math.min(fewest, of)
    const ofAll = greenwood === 0 ? fewest : (1 - ofEggs) / (ofEggs * greenwood)
    shares.set(stage, { fromStage, lost, share: shareOf(share, of), ofFirst: shareOf(ofEggs, ofAll) })
  }
  return shares
}

type Step = { from: Ends; to: Ends; isLast: boolean; fromStage: string }

function lostBetween(brood: NaiveBrood, { from, to, isLast, fromStage }: Step): [number, number] {
  if (fromStage === 'laid') return [0, from.atLeast! - to.atLeast!]
  const since = daysFrom(brood.bornOn, from.on!)
  const until = isLast ? Number.POSITIVE_INFINITY : daysFrom(brood.bornOn, to.on!)
  const culled = brood.culledDays.filter((day) => day > since && day <= until).length
  const leaving = culled + (isLast ? brood.now : 0)
  return [leaving, from.atLeast! - leaving - to.atLeast!]
}

const close = (given: { share: number; of: number; lower: number; upper: number } | null, own: Share | undefined) => {
  expect(given === null).toBe(own === undefined)
  if (!given || !own) return
  for (const key of ['share', 'of', 'lower', 'upper'] as const) expect(given[key], key).toBeCloseTo(own[key], 8)
}

describe('every figure of the survival review', () => {
  const each = rooms.flatMap((room) => {
    const reviews = reviewBroods(room)
    return naiveBroods(room).map((brood) => ({
      room,
      brood,
      review: reviews.find(({ brood: { id } }) => id === brood.clutchId)!,
    }))
  })

  test('of a clutch is what its animals, one by one, make it', () => {
    for (const { brood, review } of each) {
      const losses = [...brood.losses].filter(([, number]) => number > 0)
      expect(new Map(review.losses.map(({ cause, number }) => [(cause ?? '').toLowerCase(), number]))).toEqual(
        new Map(losses),
      )
      expect(review.losses.map(({ number }) => number)).toEqual(
        losses.map(([, number]) => number).sort((a, b) => b - a),
      )
      expect(review).toMatchObject({
        ...{ missing: brood.missing, numberNow: brood.now, mixedOn: null, tankIds: brood.tanks },
        ...{
          cultureIds: brood.cultures,
          protocol: brood.foods,
          artemiaDay: brood.artemiaDay,
          book: { bornOn: brood.bornOn },
        },
      })
    }
  })

  test('of a stage, with its date, its share and the interval of that, is what the formulas written out give', () => {
    let shown = 0
    for (const { room, brood, review } of each) {
      const stages = stagesOf(brood, { room, laidOn: review.spawnedOn })
      const shares = sharesOf(brood, stages)
      for (const { stage, ...given } of review.stages) {
        const { on, atLeast, atMost, status } = stages[stage]!
        expect({ stage, ...given }).toMatchObject({ stage, on, atLeast, atMost, status, isAboveBook: false })
        expect(given.ageDays).toBe(on === null || on < brood.bornOn ? null : daysFrom(brood.bornOn, on))
        expect(given.interval).toEqual(
          atLeast !== null && atLeast === atMost ? { lower: atLeast, upper: atLeast } : null,
        )
        const own = shares.get(stage)
        expect([given.fromStage, given.lost]).toEqual([own?.fromStage ?? null, own?.lost ?? null])
        close(given.share, own?.share)
        close(given.ofFirst, own?.ofFirst)
        shown += own ? 1 : 0
      }
    }
    expect(shown).toBeGreaterThan(200)
  })

  const comparable = (brood: NaiveBrood) => brood.countedDays.length > 1 || brood.now === 0

  test('of two pairs side by side is what their animals give, with every way to deal the clutches out tried', () => {
    const conclusions = rooms.map((room) => {
      const compared = compareBroods(reviewBroods(room), 'pair')
      const broods = naiveBroods(room).filter(comparable)
      expect(compared.leftOut.reduce((sum, { clutches }) => sum + clutches, 0)).toBe(8 - broods.length)
      expectCompared(
        compared,
        compared.groups.map(({ key }) => broods.filter(({ pairId }) => pairId === key).map(({ animals }) => animals)),
      )
      return compared.conclusion
    })
    expect(new Set(conclusions).size).toBeGreaterThan(1)
  })

  test('of groups by tank, culture and food counts each clutch where it was in its first days', () => {
    const keys = {
      tank: ({ tanks }: NaiveBrood) => tanks,
      culture: ({ cultures }: NaiveBrood) => cultures,
      protocol: ({ foods }: NaiveBrood) => [foods.join(' ')],
      green_water: ({ foods }: NaiveBrood) =>
        foods.length === 0 ? ['', ''] : [foods.includes('green_water') ? 'with' : 'without'],
      artemia_day: ({ foods, artemiaDay }: NaiveBrood) =>
        foods.length === 0 ? ['', ''] : [artemiaDay === null ? 'later' : `${artemiaDay}`],
    }
    for (const room of rooms)
      for (const [by, keyOf] of Object.entries(keys)) {
        const sums = new Map<string, { clutches: number; animals: number; deaths: number }>()
        for (const brood of naiveBroods(room).filter(comparable)) {
          const [key = '', ...others] = keyOf(brood)
          if (others.length > 0) continue
          const sum = sums.get(key) ?? { clutches: 0, animals: 0, deaths: 0 }
          sums.set(key, {
            clutches: sum.clutches + 1,
            animals: sum.animals + brood.animals.length,
            deaths: sum.deaths + observedDeaths([brood.animals])[0]!,
          })
        }
        const { groups } = compareBroods(reviewBroods(room), by as keyof typeof keys)
        const given = groups.map(({ key, clutches, animals, deaths }) => [key, { clutches, animals, deaths }] as const)
        expect(new Map(given)).toEqual(sums)
      }
  })
})

type Compared = ReturnType<typeof compareBroods>

/** Two groups of clutches, each clutch its animals. */
function expectCompared(compared: Compared, groups: readonly Animal[][][]): void {
  const all = groups.map((clutches) => clutches.flat())
  const expected = expectedDeaths(all)
  const ratios = observedDeaths(all).map((deaths, index) => deaths / expected[index]!)
  compared.groups.forEach((group, index) => {
    expect(group.clutches).toBe(groups[index]!.length)
    expect(group.deathsAgainstExpected).toBeCloseTo(ratios[index]!, 8)
    expectGroup(group, { animals: all[index]!, days: compared.days })
  })
  const [byAnimal, byClutch] = [logRankOfTwo([all[0]!, all[1]!]), dealtOut([groups[0]!, groups[1]!])]
  expect(compared.byAnimal!.degreesOfFreedom).toBe(1)
  expect(compared.byAnimal!.chiSquare).toBeCloseTo(byAnimal.chiSquare, 6)
  expect(compared.byAnimal!.pValue).toBeCloseTo(byAnimal.pValue, 6)
  expect(compared.byClutch!.pValue).toBeCloseTo(byClutch.pValue, 10)
  expect(compared.byClutch!.smallestPValue).toBeCloseTo(byClutch.smallestPValue, 10)
  expect(compared.hasFewDeaths).toBe(expected.some((deaths) => deaths < 5))
  expectConclusion(compared, { ratios, byAnimal: byAnimal.pValue, ...byClutch })
}

function expectGroup(
  group: Compared['groups'][number],
  { animals, days }: { animals: Animal[]; days: number[] },
): void {
  const curve = curveOf(animals)
  expect(group).toMatchObject({
    ...{ animals: animals.length, deaths: observedDeaths([animals])[0]! },
    followedToDay: Math.max(...animals.map(({ time }) => time)),
    atRisk: days.map((day) => atRisk(animals, day)),
    medianDays: curve.find(({ share }) => share <= 0.5)?.ageDays ?? null,
  })
  expect(group.curve).toHaveLength(curve.length)
  curve.forEach((step, place) => {
    for (const [key, value] of Object.entries(step))
      expect(group.curve[place]![key as keyof typeof step], key).toBeCloseTo(value, 8)
  })
}

type Concluded = { ratios: number[]; byAnimal: number; pValue: number; smallestPValue: number }

/** What may be concluded, and of which group fewest and most died. */
function expectConclusion(
  { conclusion, best, worst, groups }: Compared,
  { ratios, byAnimal, pValue, smallestPValue }: Concluded,
): void {
  const said = () => {
    if (smallestPValue > 0.05) return 'too_few_clutches'
    if (pValue <= 0.05) return 'differ'
    return byAnimal <= 0.05 ? 'differ_by_animals_only' : 'no_difference_shown'
  }
  expect(conclusion).toBe(said())
  const isTold = conclusion === 'differ' || conclusion === 'differ_by_animals_only'
  const [first, second] = groups.map(({ key }) => key)
  const [fewest, most] = ratios[0]! <= ratios[1]! ? [first, second] : [second, first]
  expect([best, worst]).toEqual(isTold ? [fewest, most] : [null, null])
}
