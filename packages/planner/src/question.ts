/** What a day does to what was left in a culture: n becomes gain * n / (1 + crowding * n), n in animals. */
export type DayGrowth = {
  /** How many times it multiplies while thin; 0 where it has crashed. */
  gain: number
  /** Per animal: at 1 / crowding animals it grows half as many times. */
  crowding: number
}

/** `when-short`: only what no other culture can give, as of a backup. `never`: it is in doubt and feeds nobody. */
export type CultureUse = 'free' | 'when-short' | 'never'

export type PlanCulture = {
  id: string
  /** What it holds; an eater wants one food. */
  food: string
  volumeL: number
  /** In it on the morning of day 0. */
  animals: number
  /** Day by day, what is expected from after the day's harvest to the next morning; as many as days. */
  growth: readonly DayGrowth[]
  /** Never fewer are left by a harvest. */
  floorAnimals: number
  /** Never a larger share goes in a day, whoever eats it. */
  mostShare: number
  /** Share taken on day 0 already, for none of the eaters: it counts as given on that day, and nobody eats it. */
  goneShare: number
  /** Thinned to so many each day even when nobody eats them; null when only what is eaten is taken. */
  thinnedToAnimals: number | null
  /** The first day on which it may give, from 0. */
  firstDay: number
  use: CultureUse
}

export type PlanEater = {
  id: string
  food: string
  /** Live animals that it should get on each day; as many as days. */
  wanted: readonly number[]
  /** Cultures that feed it now: the plan stays with them where it costs nothing. */
  fedFrom: readonly string[]
}

/** One way in which it may turn out, in the order of the question's cultures and eaters. */
export type Future = {
  cultures: readonly { animals: number; growth: readonly DayGrowth[] }[]
  wanted: readonly (readonly number[])[]
}

export type FoodQuestion = {
  /** How far to plan, 1 to 42. */
  days: number
  cultures: readonly PlanCulture[]
  eaters: readonly PlanEater[]
  /** Share of a harvest that is lost in sieving it. */
  sievingLoss: number
  /** At most 1,000; without any the plan is not tried. */
  futures?: readonly Future[]
}
