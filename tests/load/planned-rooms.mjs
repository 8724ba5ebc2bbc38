// Whole rooms that are kept by the list, planned on a morning and lived on from there by a nature that the plan does not
// know: how often it fell short when the plan said so and so likely.

import { foodAhead } from '@fryward/husbandry'
import { crashHazard, seededRandom } from '@fryward/live-feed'
import { planFood } from '@fryward/planner'
import { SnapshotBuilder } from '../../packages/husbandry/dist/testing/snapshot-builder.js'
import { asAdvised } from '../../packages/live-feed/dist/testing/keep-as-advised.js'
import { grow, KEPT, keep, keptCulture } from '../../packages/live-feed/dist/testing/kept-cultures.js'
import { foodQuestion } from '../../packages/room/dist/food/food-question.js'

const begin = Date.parse('2026-02-01T06:30:00.000Z')
const dayMs = 86_400_000
const at = (day, minutes = 0) => new Date(begin + day * dayMs + minutes * 60_000).toISOString()
const plannedOn = 20
const days = 21

/** @returns {Promise<{chance: number, isShort: boolean}[]>} one for each day of the plan on which anybody eats. */
export async function liveThroughPlan(seed) {
  const random = seededRandom(seed)
  const cultures = [keptCulture(2 * seed), keptCulture(2 * seed + 1)]
  const room = new SnapshotBuilder()
  // By luck of its own, so that the rooms are the same whatever their cultures share.
  const ofCrashes = seededRandom(1_000_000 + seed)
  const shared = sharedBy(ofCrashes)
  const histories = cultures.map((culture) => historyIn(room, { culture, shared }))
  const volumeL = Math.round(30 * 8 ** random.uniform())
  const tank = room.tank({ volumeL })
  const hatchDay = plannedOn - 1 + Math.floor(8 * random.uniform())
  const batch = room.batch({ hatchedOn: at(Math.min(hatchDay, plannedOn - 1)).slice(0, 10), tankId: tank.id })
  room.feedLink(batch, room.snapshot.cultures[0])
  const horizon = { today: at(plannedOn).slice(0, 10), days, futures: 300 }
  const ahead = foodAhead(room.build(), { horizon, changes: [], record: { crashes: 0, cultureDays: 0, lived: [] } })
  const question = foodQuestion(ahead)
  const { tried } = await planFood(question)
  const wanted = realWants(ahead, random)
  return live({ cultures, histories, question, wanted, crashes: crashDays(shared, ofCrashes) }).map((isShort, day) => ({
    chance: tried.days[day].chance,
    isShort,
    isEating: wanted[day] > 0,
  }))
}

/** One of the futures that the need draws: what larvae want is not what is judged here. */
const realWants = ({ eaters: [eater] }, random) =>
  eater ? eater.futures[Math.floor(random.uniform() * eater.futures.length)] : new Array(days).fill(0)

// What two cultures of a room may share here; each has a bottle and a parent of its own.
const shareable = ['airLine', 'shelf', 'tools']
/** Of the crashes that have a shared cause, each of five causes has a fifth (husbandry, crash days). */
const ofEachCause = 0.5 / 5

/** Each with even odds. */
const sharedBy = (random) => new Set(shareable.filter(() => random.uniform() < 0.5))

/** The day on which each of the two crashes: of what they share, both. */
function crashDays(shared, random) {
  const hazard = crashHazard({ crashes: 0, cultureDays: 0 })
  const drawn = (perDay) => plannedOn - Math.log(random.uniform()) / perDay
  const both = shared.size > 0 ? drawn(hazard * ofEachCause * shared.size) : Number.POSITIVE_INFINITY
  return [0, 1].map(() => Math.min(both, drawn(hazard * (1 - ofEachCause * shared.size))))
}

/** Three weeks of a culture as advised, written down in the room; gives how dense it then really is. */
function historyIn(room, { culture, shared }) {
  const { strain, salinity, temperatureC, startPerMl } = culture
  const vessel = room.culture({
    startedAt: at(0, -30),
    strain,
    salinity,
    temperatureC,
    volumeL: KEPT.volumeL,
    concentrateId: null,
    ...Object.fromEntries(shareable.map((what) => [what, shared.has(what) ? 'one' : `of ${culture.seed}`])),
  })
  room.fact('inoculation', vessel.id, at(0, -30), { densityPerMl: startPerMl })
  const advised = asAdvised(culture)
  let last = { observations: 0 }
  const shares = []
  keep(culture, (seen) => {
    if (seen.day >= plannedOn) {
      writeCounts(seen)
      return 0
    }
    writeCounts(seen)
    const share = advised(seen)
    shares.push(share)
    if (share > 0) {
      const litres = Number((share * KEPT.volumeL).toFixed(3))
      room.fact('harvest', vessel.id, at(seen.day, 30), { volumeL: litres, parts: [{ to: 'drain', volumeL: litres }] })
      room.fact('water_change', vessel.id, at(seen.day, 40), { removedL: 0, addedL: litres })
    }
    return share
  })
  function writeCounts({ day, observations }) {
    if (day > plannedOn || observations.length === last.observations) return
    last = { observations: observations.length }
    const { densityPerMl, animalsCounted } = observations.at(-1)
    const animals = Math.max(1, animalsCounted)
    room.fact('count', vessel.id, at(day, 0), {
      of: 'culture',
      animals: [animals],
      volumeMl: animals / Math.max(1, densityPerMl),
    })
  }
  let density = startPerMl
  for (const [day, share] of shares.entries()) density = grow(culture, density * (1 - share), culture.days[day].shock)
  return { density }
}

/** The batch eats what it wants from its own culture, then from the other; each is thinned as the plan thinks. */
function live({ cultures, histories, question, wanted, crashes }) {
  const ml = KEPT.volumeL * 1000
  const animals = histories.map(({ density }) => density * ml)
  return wanted.map((asked, day) => {
    let hungry = asked / (1 - question.sievingLoss)
    for (const [index, culture] of question.cultures.entries()) {
      const { floorAnimals, mostShare, thinnedToAnimals, use } = culture
      const there = animals[index]
      const most = use === 'free' ? Math.max(0, Math.min(mostShare * there, there - floorAnimals)) : 0
      const taken = Math.min(most, hungry)
      hungry -= taken
      const left = there - taken
      const thinned = thinnedToAnimals === null ? left : Math.min(left, Math.max(thinnedToAnimals, there - most))
      const shock = cultures[index].days[plannedOn + day]?.shock ?? 0
      animals[index] = plannedOn + day + 1 > crashes[index] ? 0 : grow(cultures[index], thinned / ml, shock) * ml
    }
    return (hungry * (1 - question.sievingLoss)) / Math.max(1, asked) > 0.1
  })
}
