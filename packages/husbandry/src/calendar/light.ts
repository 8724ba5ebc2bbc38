import type { Instant } from '@fryward/shared'
import { addHours, elapsedHours } from './elapsed.ts'
import { type HusbandryDay, husbandryDay, localDate } from './husbandry-day.ts'
import { type DayRound, roundsInOrder, spread } from './rounds.ts'

type Lights = Pick<HusbandryDay, 'lightsOnAt' | 'lightsOffAt'>

/** Hours of light still to come at an instant of a day; null in the dark. Lights may burn over midnight. */
export function hoursUntilDark({ lightsOnAt, lightsOffAt }: Lights, at: Instant): number | null {
  const isOverMidnight = lightsOffAt <= lightsOnAt
  if (isOverMidnight && at >= lightsOnAt) return elapsedHours(at, addHours(lightsOffAt, 24))
  return (isOverMidnight || at >= lightsOnAt) && at < lightsOffAt ? elapsedHours(at, lightsOffAt) : null
}

/**
 * The rounds at which larvae are fed live food: `number` of them spread over the light, for they hunt by eye; the last so
 * many hours before dark, where what is left over by night does harm. Two feeds come first: where the rounds do not allow
 * two in that time any lit round will do, and then any round at all. common practice
 */
export function liveFeedRounds(
  day: HusbandryDay,
  { number, hoursBeforeDark }: { number: number; hoursBeforeDark: number },
): DayRound[] {
  const rounds = roundsInOrder(day)
  const lit = (hours: number) =>
    rounds.filter(({ startsAt }) => {
      const left = hoursUntilDark(day, startsAt)
      return left !== null && left >= hours
    })
  const fewest = Math.min(2, number, rounds.length)
  const found = [lit(hoursBeforeDark), lit(0), rounds].find((each) => each.length >= fewest) ?? rounds
  return spread(found, number)
}

/** How many hours between two instants, at most a few days apart, lay in the light and how many in the dark. */
export function hoursByLight(
  room: Parameters<typeof husbandryDay>[0]['room'],
  { from, to }: { from: Instant; to: Instant },
): { light: number; dark: number } {
  const all = elapsedHours(from, to)
  // The evening before may have lit its lamps over midnight.
  const dates = [addHours(from, -24), from, to].map((at) => localDate({ timeZone: room.timeZone, at }))
  let light = 0
  for (const date of new Set(dates)) {
    const { lightsOnAt, lightsOffAt } = husbandryDay({ room, date })
    const offAt = lightsOffAt > lightsOnAt ? lightsOffAt : addHours(lightsOffAt, 24)
    const start = lightsOnAt > from ? lightsOnAt : from
    const end = offAt < to ? offAt : to
    if (start < end) light += elapsedHours(start, end)
  }
  return { light, dark: Math.max(0, all - light) }
}
