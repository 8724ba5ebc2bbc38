import { describe, expect, test } from 'vitest'
import { oneFeederEach } from './one-feeder-each.ts'
import type { FoodQuestion, PlanCulture, PlanEater } from './question.ts'

const culture = (id: string, animals = 100, given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals, growth: new Array(2).fill({ gain: 2, crowding: 0 }) },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free', ...given },
})
const eater = (wanted: number[], fedFrom: string[] = [], food = 'rotifers'): PlanEater => ({
  ...{ id: `${wanted} ${fedFrom}`, food, wanted, fedFrom },
})
/** The culture of each eater by their order; null where no choice feeds all. */
function chosen(cultures: PlanCulture[], eaters: PlanEater[], sievingLoss = 0): (string | undefined)[] | null {
  const question: FoodQuestion = { days: 2, cultures, eaters, sievingLoss }
  const feeders = oneFeederEach(question)
  return feeders && eaters.map((_, index) => cultures[feeders.get(index)!]?.id)
}

describe('one culture for each batch', () => {
  test('is the one that feeds it, though another would be strained less', () => {
    expect(chosen([culture('A'), culture('B', 900)], [eater([40, 40], ['A'])])).toEqual(['A'])
    expect(chosen([culture('A'), culture('B', 900)], [eater([40, 40])])).toEqual(['B'])
    // As few new feeders as can be in all, even where the first that is looked at has a new one.
    expect(chosen([culture('A'), culture('B')], [eater([50, 0], ['A']), eater([40, 0], ['A'])])).toEqual(['A', 'B'])
  })

  test('strains the hardest used least, on the hardest day', () => {
    const two = [eater([30, 0]), eater([20, 0])]
    expect(new Set(chosen([culture('A'), culture('B')], two))).toEqual(new Set(['A', 'B']))
    // Together they are half of what the large one may give; of the small one either is more.
    expect(chosen([culture('A', 60), culture('B', 200)], two)).toEqual(['B', 'B'])
    // A day later the small one has grown no larger than what it is asked for.
    const fast = culture('A', 100, { growth: new Array(2).fill({ gain: 4, crowding: 0 }) })
    expect(chosen([culture('B'), fast], [eater([10, 80])])).toEqual(['A'])
  })

  test('is none where somebody cannot have all he wants of one', () => {
    expect(chosen([culture('A'), culture('B')], [eater([50, 50])])).toEqual(['A'])
    expect(chosen([culture('A'), culture('B')], [eater([51, 0])])).toBeNull()
    expect(chosen([culture('A')], [eater([50, 51])])).toBeNull()
    expect(chosen([culture('A')], [eater([45, 0])], 0.1)).toEqual(['A'])
    expect(chosen([culture('A')], [eater([46, 0])], 0.1)).toBeNull()
    expect(chosen([culture('A', 80), culture('B', 80)], [eater([30, 0]), eater([30, 0]), eater([30, 0])])).toBeNull()
  })

  test('is of its food, free to give and old enough, and nobody’s who eats nothing', () => {
    const cultures = [
      culture('A', 900, { food: 'copepods' }),
      culture('B', 900, { use: 'when-short' }),
      culture('C', 900, { use: 'never' }),
      culture('D', 900, { firstDay: 1 }),
      culture('E'),
    ]
    expect(chosen(cultures, [eater([10, 10]), eater([0, 0])])).toEqual(['E', undefined])
    expect(chosen(cultures, [eater([0, 10])])).toEqual(['D'])
    expect(chosen(cultures.slice(0, 4), [eater([10, 10])])).toBeNull()
    expect(chosen([], [])).toEqual([])
  })

  test('is sought for whoever eats most first, and the room is as it was left the day before', () => {
    // Only the large one can feed the hungriest; the other two are left to the small one.
    const cultures = [culture('A', 100), culture('B', 90)]
    expect(chosen(cultures, [eater([20, 0]), eater([50, 0]), eater([20, 0])])).toEqual(['B', 'A', 'B'])
    // Thinned in the evening to 20, which are 40: it gives twenty tomorrow.
    const thinned = [culture('A', 100, { thinnedToAnimals: 20, mostShare: 0.8 })]
    expect(chosen(thinned, [eater([10, 32])])).toEqual(['A'])
    expect(chosen(thinned, [eater([10, 33])])).toBeNull()
  })
})

describe('a choice that is far to seek', () => {
  /**
   * The last eats of the first culture alone, today, when it grows a hundredfold; so the hungriest must not have that one, and
   * is tried there first, with every choice of so many cultures for each of those between.
   */
  function sought(cultures: number, between: number) {
    const fast = new Array(2).fill({ gain: 100, crowding: 0 })
    const old = culture('first', 100, { mostShare: 1, growth: fast })
    const young = Array.from({ length: cultures - 1 }, (_, c) => culture(`${c}`, 1e6, { firstDay: 1 }))
    const others = Array.from({ length: between }, () => eater([0, 10]))
    return chosen([old, ...young], [eater([0, 9900]), ...others, eater([5, 0])])
  }

  test('is found within 20,000 tries, and given up beyond them', () => {
    // Of 5 cultures for 5 between them the tries are 1 + 5 + 25 + ... + 5^5 and five for the last of each: 19,531.
    expect(sought(5, 5)).not.toBeNull()
    // Of 4 for 6 they are 1 + 4 + ... + 4^6 and four for the last of each: 21,845.
    expect(sought(4, 6)).toBeNull()
  })
})
