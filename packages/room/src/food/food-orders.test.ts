import type { FoodOrders, FoodOutlook } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { outlookDay, outlookOf } from '../testing/made-up-food.ts'
import { ordersOf, saysTheSame } from './food-orders.ts'

const culture = (id: string, cultureId: string | null): FoodOutlook['cultures'][number] => ({
  ...{ id, cultureId, name: id, volumeL: 10, standing: 'gives', sharesCausesWith: [] },
})
const eater = (id: string, kind: FoodOutlook['eaters'][number]['kind'] = 'larval_batch') => ({
  ...{ id, kind, subjectId: `subject of ${id}`, name: id, larvae: 300, nights: [] },
})
const give = (cultureId: string, eaterId: string, animals: number) => ({
  cultureId,
  eaterId,
  volumeL: animals / 1e5,
  animals,
})
const wants = (id: string, wanted: number, got: number) => ({ id, wanted, got, chanceShort: 0 })

/** Two cultures that stand, one still to be started, the chilled reserve; one batch and one clutch. */
const outlookWith = (day: Partial<FoodOutlook['days'][number]>) =>
  outlookOf({
    cultures: [culture('r1', 'r1'), culture('r2', 'r2'), culture('new', null), culture('chilled', null)],
    eaters: [eater('batch'), eater('clutch', 'clutch')],
    days: ['2026-03-10', '2026-03-11', '2026-03-12'].map((date) => outlookDay(date, day)),
  })
const firstBatches = (day: Partial<FoodOutlook['days'][number]>) => ordersOf(outlookWith(day))[0]!.batches

describe('what the list is told of a plan', () => {
  test('is of today and tomorrow, and of batches and cultures that stand', () => {
    const day = {
      gives: [give('r1', 'batch', 4e5), give('new', 'batch', 1e5), give('r1', 'clutch', 3e5)],
      cultures: ['r1', 'new'].map((id) => ({ id, densityPerMl: 100, fedL: 7, spareL: 1 })),
      eaters: [wants('batch', 5e5, 5e5), wants('clutch', 3e5, 3e5)],
    }
    const orders = ordersOf(outlookWith(day))
    expect(orders.map(({ date }) => date)).toEqual(['2026-03-10', '2026-03-11'])
    for (const { batches, cultures } of orders) {
      expect(batches).toEqual([
        { batchId: 'subject of batch', share: 1, from: [{ cultureId: 'r1', volumeL: 4, animals: 4e5 }] },
      ])
      expect(cultures).toEqual([{ cultureId: 'r1', fedL: 7, spareL: 1 }])
    }
  })

  test('names whoever gives most first, and of two that give as much always the same', () => {
    const from = (gives: FoodOutlook['days'][number]['gives']) =>
      firstBatches({ gives, eaters: [wants('batch', 5e5, 5e5)] })[0]!.from.map(({ cultureId }) => cultureId)
    expect(from([give('r1', 'batch', 1e5), give('r2', 'batch', 4e5)])).toEqual(['r2', 'r1'])
    expect(from([give('r2', 'batch', 2e5), give('r1', 'batch', 2e5)])).toEqual(['r1', 'r2'])
    expect(from([give('r1', 'batch', 2e5), give('r2', 'batch', 2e5)])).toEqual(['r1', 'r2'])
  })

  test('is a share of what a batch wants where food is short, beside what the reserve gives', () => {
    // 500,000 are wanted; 150,000 come of the reserve and 200,000 of R1: the cultures give two fifths.
    const day = {
      gives: [give('chilled', 'batch', 1.5e5), give('r1', 'batch', 2e5)],
      eaters: [wants('batch', 5e5, 3.5e5)],
    }
    expect(firstBatches(day)).toMatchObject([{ share: 0.4, chilled: 1.5e5, from: [{ cultureId: 'r1' }] }])
    // A plan is no better than a count: with 97 % nothing is short.
    const shareOf = (got: number) => firstBatches({ eaters: [wants('batch', 5e5, got)] })[0]!.share
    expect([4.84e5, 4.85e5, 5e5].map(shareOf)).toEqual([0.97, 1, 1])
    expect(shareOf(0)).toBe(0)
    expect(firstBatches({ eaters: [wants('batch', 0, 0)] })).toEqual([])
    expect(firstBatches({ eaters: [] })).toEqual([])
  })
})

describe('a list that follows a new plan', () => {
  const orders = (given: Partial<FoodOrders['batches'][number]> = {}, fedL = 4, spareL = 2): FoodOrders[] => {
    const from = [{ cultureId: 'r1', volumeL: 4, animals: 4e5 }]
    const batches = [{ batchId: 'batch', share: 0.5, from, chilled: 1e5, ...given }]
    return [{ date: '2026-03-10', batches, cultures: [{ cultureId: 'r1', fedL, spareL }] }]
  }
  const isTold = (...other: Parameters<typeof orders>) => {
    expect(saysTheSame(orders(...other), orders())).toBe(saysTheSame(orders(), orders(...other)))
    return !saysTheSame(orders(), orders(...other))
  }
  const fromR1 = (volumeL: number) => ({ from: [{ cultureId: 'r1', volumeL, animals: 4e5 }] })

  test('stays where nothing is a tenth apart', () => {
    expect(isTold()).toBe(false)
    expect(isTold(fromR1(4.4))).toBe(false)
    expect(isTold({ share: 0.54, chilled: 1.09e5 }, 3.7, 2.1)).toBe(false)
  })

  test('is written anew where an amount, a share, a source or a day is another', () => {
    expect(isTold(fromR1(4.6))).toBe(true)
    expect(isTold(fromR1(3.5))).toBe(true)
    expect(isTold({ share: 0.56 })).toBe(true)
    expect(isTold({ chilled: 1.2e5 })).toBe(true)
    expect(isTold({ chilled: undefined })).toBe(true)
    expect(isTold({}, 4.6)).toBe(true)
    expect(isTold({}, 4, 2.5)).toBe(true)
    expect(isTold({ batchId: 'another' })).toBe(true)
    expect(isTold({ from: [{ cultureId: 'r2', volumeL: 4, animals: 4e5 }] })).toBe(true)
    expect(isTold({ from: [...orders()[0]!.batches[0]!.from, { cultureId: 'r2', volumeL: 1, animals: 1e5 }] })).toBe(
      true,
    )
    const [day] = orders()
    expect(saysTheSame([day!], [])).toBe(false)
    expect(saysTheSame([day!], [{ ...day!, date: '2026-03-11' }])).toBe(false)
    expect(saysTheSame([day!], [{ ...day!, cultures: [] }])).toBe(false)
    expect(saysTheSame([day!], [{ ...day!, cultures: [{ ...day!.cultures[0]!, cultureId: 'r2' }] }])).toBe(false)
  })

  test('is written anew for one of several batches, cultures or days', () => {
    const [day] = orders()
    const twice = (of: Partial<FoodOrders>) => ({ ...day!, ...of })
    const [batch, culture] = [day!.batches[0]!, day!.cultures[0]!]
    const two = twice({ batches: [batch, batch], cultures: [culture, culture] })
    expect(saysTheSame([two, two], [two, two])).toBe(true)
    for (const other of [
      twice({ ...two, batches: [batch, { ...batch, share: 1 }] }),
      twice({ ...two, batches: [{ ...batch, share: 1 }, batch] }),
      twice({ ...two, cultures: [culture, { ...culture, fedL: 9 }] }),
    ]) {
      expect(saysTheSame([two], [other])).toBe(false)
      expect(saysTheSame([two, two], [two, other])).toBe(false)
    }
  })

  test('stays for less than a jug shows of small amounts', () => {
    expect(saysTheSame(orders({}, 0, 0), orders({}, 0.05, 0))).toBe(true)
    expect(saysTheSame(orders({}, 0, 0), orders({}, 0.06, 0))).toBe(false)
  })
})
