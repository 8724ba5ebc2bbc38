import { CHILLED_STORE } from '@fryward/live-feed'
import { chilledReserveDefinition } from '../definitions/live-food/chilled-reserve.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { type ChilledJar, chilledJars, shareAliveAfter } from '../state/chilled-jars.ts'
import type { CultureAhead } from './culture-ahead.ts'
import { dayAhead, eachDay, type FoodHorizon } from './food-days.ts'

/** What the chilled reserve is called in a plan. */
export const chilledId = 'chilled'

/** Of chilled rotifers as many lie in a litre. */
export const chilledPerL = CHILLED_STORE.densityPerMl * 1000

/** The chilled reserve as one supply: fewer live each day, and jars that are too old by then are gone; none where it is empty. */
export function chilledAhead(snapshot: RoomSnapshot, horizon: FoodHorizon): CultureAhead[] {
  const { oldestDays } = ruleInForce(snapshot, chilledReserveDefinition).parameters
  const jars = chilledJars(snapshot, { day: dayAhead(snapshot, horizon, 0), oldestDays })
  const aliveOn = (day: number): number =>
    jars.filter(({ ageDays }) => ageDays + day < oldestDays).reduce((sum, jar) => sum + aliveIn(jar, day), 0)
  const animals = aliveOn(0)
  if (animals <= 0) return []
  const growth = eachDay(horizon, (day) => {
    const [today, next] = [aliveOn(day), aliveOn(day + 1)]
    return { gain: today > 0 ? next / today : 0, crowding: 0 }
  })
  return [
    {
      ...{ id: chilledId, culture: null, name: 'the chilled reserve', animals, growth, standing: 'chilled' },
      ...{
        volumeL: animals / chilledPerL,
        floorAnimals: 0,
        mostShare: 1,
        goneShare: 0,
        thinnedToAnimals: null,
        firstDay: 0,
      },
      futures: Array.from({ length: horizon.futures }, () => ({ animals, growth })),
      sharesCausesWith: [],
    },
  ]
}

/** Live rotifers of a jar so many days from now. */
const aliveIn = ({ alive, ageDays }: ChilledJar, day: number): number =>
  (alive * shareAliveAfter(ageDays + day)) / shareAliveAfter(ageDays)
