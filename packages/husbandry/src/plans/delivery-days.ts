import type { PlainDate } from '@fryward/shared'
import { addDays, daysBetween } from '../calendar/husbandry-day.ts'
import { foodBuyInDefinition } from '../definitions/live-food/food-cures.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

// 1970-01-01 was a Thursday.
const weekdayOf = (date: PlainDate): number => (((daysBetween('1970-01-01', date) + 4) % 7) + 7) % 7
const [sunday, saturday] = [0, 6]

/** How many days after its order a parcel comes, and on which days of the week one does. */
export function deliveriesOf(snapshot: RoomSnapshot) {
  const { deliveryDays, comesSaturday, comesSunday } = ruleInForce(snapshot, foodBuyInDefinition).parameters
  const comesOn = (date: PlainDate): boolean => {
    const weekday = weekdayOf(date)
    return weekday === saturday ? comesSaturday : weekday === sunday ? comesSunday : true
  }
  return { deliveryDays, comesOn }
}

/** The last day by a date on which a parcel that is ordered today may come; else the first after it. */
export function deliveryBy(snapshot: RoomSnapshot, { today, by }: { today: PlainDate; by: PlainDate }): PlainDate {
  const { deliveryDays, comesOn } = deliveriesOf(snapshot)
  const soonest = addDays(today, deliveryDays)
  for (let date = by; date >= soonest; date = addDays(date, -1)) if (comesOn(date)) return date
  let date = soonest > by ? soonest : addDays(by, 1)
  while (!comesOn(date)) date = addDays(date, 1)
  return date
}
