// Days of one room go together: a share of days is as sure as the rooms that they come from, not as the days.
import { seededRandom } from '@fryward/live-feed'

const draws = 1000

/** 95 % of the share of days that fell short, by drawing the rooms anew (Efron 1979, Ann. Stat. 7:1-26). */
export function countInterval(days) {
  const rooms = new Map()
  for (const { seed, isShort } of days) {
    const room = rooms.get(seed) ?? { days: 0, short: 0 }
    rooms.set(seed, { days: room.days + 1, short: room.short + (isShort ? 1 : 0) })
  }
  const all = [...rooms.values()]
  const random = seededRandom(7)
  const shares = Array.from({ length: draws }, () => {
    let [number, short] = [0, 0]
    for (let index = 0; index < all.length; index += 1) {
      const room = all[Math.floor(random.uniform() * all.length)]
      number += room.days
      short += room.short
    }
    return short / number
  }).sort((a, b) => a - b)
  return { lower: shares[Math.floor(0.025 * draws)], upper: shares[Math.floor(0.975 * draws)] }
}
