import type { FoodOrders, Id, Instant, PlainDate } from '@fryward/shared'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'

type BatchOrder = FoodOrders['batches'][number]
type CultureOrder = FoodOrders['cultures'][number]

/** What the plan of the food says of something on a day, and when it was made. */
export type Ordered<T> = T & { madeAt: Instant }

const ordersOn = ({ foodPlan }: RoomSnapshot, date: PlainDate): Ordered<FoodOrders> | null => {
  const orders = foodPlan?.days.find((day) => day.date === date)
  return foodPlan && orders ? { ...orders, madeAt: foodPlan.madeAt } : null
}

/** Who gives a batch its rotifers on a date by the plan, and how much of what it wants; null where the plan says nothing. */
export function batchOrder(
  snapshot: RoomSnapshot,
  batch: Pick<SnapshotBatch, 'id'>,
  date: PlainDate,
): Ordered<BatchOrder> | null {
  const orders = ordersOn(snapshot, date)
  const order = orders?.batches.find(({ batchId }) => batchId === batch.id)
  // A plan that has nothing for it says no more than the list does: whatever there is is shared.
  return orders && order && order.from.length > 0 && order.share > 0 ? { ...order, madeAt: orders.madeAt } : null
}

/** What goes of a culture on a date by the plan, eaten and thinned; null where the plan says nothing. */
export function cultureOrder(
  snapshot: RoomSnapshot,
  culture: Pick<SnapshotCulture, 'id'>,
  date: PlainDate,
): Ordered<CultureOrder> | null {
  const orders = ordersOn(snapshot, date)
  const order = orders?.cultures.find(({ cultureId }) => cultureId === culture.id)
  return orders && order ? { ...order, madeAt: orders.madeAt } : null
}

/** Live rotifers that the plan gives a batch of the chilled reserve on a date; null where it says nothing of it. */
export function chilledOrder(
  snapshot: RoomSnapshot,
  batch: Pick<SnapshotBatch, 'id'>,
  date: PlainDate,
): Ordered<{ animals: number }> | null {
  const orders = ordersOn(snapshot, date)
  const animals = orders?.batches.find(({ batchId }) => batchId === batch.id)?.chilled ?? 0
  return orders && animals > 0 ? { animals, madeAt: orders.madeAt } : null
}

/** Live rotifers that the plan gives a batch of a culture on a date. */
export const orderedOf = (order: BatchOrder | null, cultureId: Id): BatchOrder['from'][number] | null =>
  order?.from.find((each) => each.cultureId === cultureId) ?? null
