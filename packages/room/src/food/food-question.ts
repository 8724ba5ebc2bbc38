import { type CultureAhead, type FoodAhead, meanWanted } from '@fryward/husbandry'
import type { CultureUse, FoodQuestion } from '@fryward/planner'

const food = 'rotifers'

/** A room's food as the planner is asked about it. */
export function foodQuestion(ahead: FoodAhead): FoodQuestion {
  const { days, cultures, eaters, sievingLoss } = ahead
  const futures = cultures[0]?.futures.length ?? eaters[0]?.futures.length ?? 0
  return {
    days,
    sievingLoss,
    cultures: cultures.map((culture) => {
      const { id, volumeL, animals, growth, floorAnimals, mostShare, goneShare, thinnedToAnimals, firstDay } = culture
      const known = {
        id,
        food,
        volumeL,
        animals,
        growth,
        floorAnimals,
        mostShare,
        goneShare,
        thinnedToAnimals,
        firstDay,
      }
      return { ...known, use: useOf(culture, ahead) }
    }),
    eaters: eaters.map((eater) => ({ id: eater.id, food, wanted: meanWanted(eater, days), fedFrom: eater.fedFrom })),
    futures: Array.from({ length: futures }, (_, future) => ({
      cultures: cultures.map((culture) => culture.futures[future]!),
      wanted: eaters.map((eater) => eater.futures[future]!),
    })),
  }
}

function useOf({ standing }: CultureAhead, { mayUseBackups, mayUseReserve }: FoodAhead): CultureUse {
  if (standing === 'gives' || standing === 'too_young') return 'free'
  const mayBeAsked = standing === 'backup' ? mayUseBackups : standing === 'chilled' && mayUseReserve
  return mayBeAsked ? 'when-short' : 'never'
}
