import type { FoodOrders } from '@fryward/shared'
import { column, instant, kind } from './column.ts'

/** The plan of the food that rules read: the last one that said something else than the one before it; one row at most. */
export const foodPlans = kind(
  { madeAt: instant('made_at'), days: column<FoodOrders[]>('orders') },
  `(SELECT made_at, orders FROM food_plan WHERE food_plan.room_id = room.id AND stands_since IS NOT NULL
    ORDER BY stands_since DESC LIMIT 1) AS standing_plan`,
  'made_at',
)
