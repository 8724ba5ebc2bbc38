import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { batchOrder, chilledOrder, cultureOrder, orderedOf } from './food-orders.ts'

const date = '2026-03-10'
const madeAt = '2026-03-10T05:00:00.000Z'
const from = [{ cultureId: 'r1', volumeL: 2, animals: 2e5 }]

function planned(given: object = {}) {
  const { snapshot } = new SnapshotBuilder()
  const batches = [{ batchId: 'b', share: 0.8, from, ...given }]
  const cultures = [{ cultureId: 'r1', fedL: 2, spareL: 1 }]
  return { ...snapshot, foodPlan: { madeAt, days: [{ date, batches, cultures }] } as typeof snapshot.foodPlan }
}
const batch = { id: 'b' }

test('a plan is asked for its own days, and for whom it names', () => {
  expect(batchOrder(planned(), batch, date)).toEqual({ batchId: 'b', share: 0.8, from, madeAt })
  expect(cultureOrder(planned(), { id: 'r1' }, date)).toEqual({ cultureId: 'r1', fedL: 2, spareL: 1, madeAt })
  expect(orderedOf(batchOrder(planned(), batch, date), 'r1')).toEqual(from[0])
  for (const order of [
    batchOrder(planned(), batch, '2026-03-11'),
    batchOrder(planned(), { id: 'another' }, date),
    batchOrder({ ...planned(), foodPlan: null }, batch, date),
    cultureOrder(planned(), { id: 'r2' }, date),
    cultureOrder(planned(), { id: 'r1' }, '2026-03-09'),
    orderedOf(batchOrder(planned(), batch, date), 'r2'),
    orderedOf(null, 'r1'),
  ])
    expect(order).toBeNull()
})

test('a plan that has nothing for a batch says nothing of it, for the list shares what there is', () => {
  expect(batchOrder(planned({ from: [] }), batch, date)).toBeNull()
  expect(batchOrder(planned({ share: 0 }), batch, date)).toBeNull()
})

test('of the reserve a batch gets what the plan says of it, also where no culture gives anything', () => {
  expect(chilledOrder(planned({ chilled: 5e4, from: [], share: 0 }), batch, date)).toEqual({ animals: 5e4, madeAt })
  for (const given of [{}, { chilled: 0 }]) expect(chilledOrder(planned(given), batch, date)).toBeNull()
  expect(chilledOrder(planned({ chilled: 5e4 }), { id: 'another' }, date)).toBeNull()
  expect(chilledOrder(planned({ chilled: 5e4 }), batch, '2026-03-11')).toBeNull()
})
