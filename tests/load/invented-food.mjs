// Rooms to plan the food of: cultures and batches drawn by seed, with ways in which it may turn out.
import { seededRandom } from '@fryward/live-feed'

const days = 21
const between = (random, low, high) => low + (high - low) * random.uniform()

/**
 * @param {{seed: number, cultures: number, batches: number, load: number, futures: number}} asked `load` is what the
 *   batches want on an average day, as a share of what the cultures give if each is kept where it gives most.
 */
export function inventedFood({ seed, cultures: number, batches, load, futures }) {
  const random = seededRandom(seed)
  const cultures = Array.from({ length: number }, (_, index) => inventedCulture(random, `R${index + 1}`))
  const yieldPerDay = cultures.reduce((sum, culture) => sum + steadyYield(culture), 0)
  const eaters = Array.from({ length: batches }, (_, index) => inventedBatch(random, `B${index + 1}`, cultures))
  const wanted = eaters.reduce((sum, eater) => sum + eater.wanted.reduce((all, each) => all + each, 0), 0)
  const scale = wanted > 0 ? (load * yieldPerDay * days) / wanted : 0
  for (const eater of eaters) eater.wanted = eater.wanted.map((animals) => animals * scale)
  const question = { days, sievingLoss: 0.1, cultures, eaters }
  return { ...question, futures: Array.from({ length: futures }, () => inventedFuture(random, question)) }
}

function inventedCulture(random, id) {
  const volumeL = Math.round(between(random, 8, 30))
  const capacity = between(random, 350, 1000) * volumeL * 1000
  const gain = Math.exp(between(random, 0.2, 0.6))
  const growth = { gain, crowding: (gain - 1) / capacity }
  return {
    ...{ id, food: 'rotifers', volumeL, animals: capacity * between(random, 0.25, 0.7) },
    growth: Array.from({ length: days }, () => growth),
    ...{
      floorAnimals: 50 * volumeL * 1000,
      mostShare: 0.5,
      goneShare: 0,
      thinnedToAnimals: capacity / 2,
      firstDay: 0,
      use: 'free',
    },
  }
}

/** Most that a logistic day gives over and over, for half of the capacity left behind. */
function steadyYield({ growth: [{ gain, crowding }], thinnedToAnimals: left }) {
  return (gain * left) / (1 + crowding * left) - left
}

function inventedBatch(random, id, cultures) {
  const from = Math.floor(between(random, -6, 14))
  const size = between(random, 0.5, 1.5)
  const wanted = Array.from({ length: days }, (_, day) => (day < from || day >= from + 12 ? 0 : size))
  const fedFrom = from < 0 ? [cultures[Math.floor(random.uniform() * cultures.length)].id] : []
  return { id, food: 'rotifers', wanted, fedFrom }
}

const crashPerDay = 0.01

/** Each culture with its own growth, days of its own, and now and then a crash; batches hungrier or less. */
function inventedFuture(random, { cultures, eaters }) {
  return {
    cultures: cultures.map(({ animals, growth }) => {
      const own = 0.08 * random.normal()
      const crash = -Math.log(random.uniform()) / crashPerDay
      return {
        animals: animals * Math.exp(0.12 * random.normal()),
        growth: growth.map(({ gain, crowding }, day) =>
          day + 1 > crash ? { gain: 0, crowding: 0 } : { gain: gain * Math.exp(own + 0.1 * random.normal()), crowding },
        ),
      }
    }),
    wanted: eaters.map(({ wanted }) => {
      const hungrier = Math.exp(0.25 * random.normal())
      return wanted.map((animals) => animals * hungrier)
    }),
  }
}
