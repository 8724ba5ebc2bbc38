/**
 * How long a plan of the food takes, how short it falls against a greedy one and one that knew the future, and how often it
 * fell short when it said so. `npm run bench plan [rooms]`.
 */
import { performance } from 'node:perf_hooks'
import { planFood } from '@fryward/planner'
import { dayWeight, programOf } from '../../packages/planner/dist/program.js'
import { solve } from '../../packages/planner/dist/solve.js'
import { liveThrough } from '../../packages/planner/dist/try-futures.js'
import { countInterval } from './intervals.mjs'
import { inventedFood } from './invented-food.mjs'
import { liveThroughPlan } from './planned-rooms.mjs'

const futures = 300
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]

async function timed(asked) {
  const took = []
  for (let seed = 1; seed <= 7; seed += 1) {
    const question = inventedFood({ seed, futures, ...asked })
    const started = performance.now()
    await planFood(question)
    took.push(performance.now() - started)
  }
  return took
}

async function reportTimes() {
  // The first plan loads the solver.
  await planFood(inventedFood({ seed: 1, cultures: 2, batches: 2, load: 3, futures: 1 }))
  for (const [name, asked, most] of [
    ['6 cultures, 5 batches, food for all', { cultures: 6, batches: 5, load: 0.4 }, 1000],
    ['6 cultures, 5 batches, too little food', { cultures: 6, batches: 5, load: 1.3 }, 1000],
    ['1 culture, 1 batch', { cultures: 1, batches: 1, load: 0.4 }, 200],
    ['1 culture, 1 batch, too little food', { cultures: 1, batches: 1, load: 1.3 }, 200],
  ]) {
    const took = await timed(asked)
    console.log(
      `${name}: median ${median(took).toFixed(0)} ms, slowest ${Math.max(...took).toFixed(0)} ms (at most ${most})`,
    )
  }
}

const total = (values) => values.reduce((sum, value) => sum + value, 0)
const missing = (lived) => total(lived.flatMap(({ wanted, got }) => wanted.map((all, e) => Math.max(0, all - got[e]))))

/** Animals missing in one drawn future: by the plan, by whoever takes from the fullest culture, and had one known it. */
async function shortfalls(seed) {
  const {
    futures: [future],
    ...question
  } = inventedFood({ seed, cultures: 4, batches: 4, load: 0.5, futures: 1 })
  const { tried } = await planFood({ ...question, futures: [future] })
  const noPlan = Array.from({ length: question.days }, () => ({
    taken: question.cultures.map(() => question.eaters.map(() => 0)),
  }))
  const nobodyLinked = question.eaters.map((eater) => ({ ...eater, fedFrom: [] }))
  const known = await planFood({
    ...question,
    cultures: question.cultures.map((culture, index) => ({ ...culture, ...future.cultures[index] })),
    eaters: question.eaters.map((eater, index) => ({ ...eater, wanted: future.wanted[index] })),
  })
  return {
    plan: total(tried.days.map(({ short }) => short.mean)),
    greedy: missing(liveThrough({ ...question, eaters: nobodyLinked }, future, noPlan)),
    known: known.shortfall,
    wanted: total(future.wanted.flat()),
  }
}

async function reportShortfalls(rooms) {
  const found = []
  for (let seed = 1; seed <= rooms; seed += 1) found.push(await shortfalls(seed))
  const share = (which) => total(found.map((each) => each[which])) / total(found.map(({ wanted }) => wanted))
  const percent = (which) => `${(100 * share(which)).toFixed(2)} %`
  console.log(
    `${rooms} rooms, of all that was wanted missing: plan ${percent('plan')}, greedy ${percent('greedy')}, had one known ${percent('known')}`,
  )
  console.log(
    `  plan / greedy ${(share('plan') / share('greedy')).toFixed(3)}, plan / known ${(share('plan') / share('known')).toFixed(3)}`,
  )
}

/** The least that must be missing where batches eat of these cultures alone, an animal as much as its day counts. */
async function leastMissing(question, links) {
  const program = programOf(
    question,
    links.map((row) => row.map((isFed) => (isFed ? 0 : null))),
  )
  return (await solve(program)).cost * program.unit
}

/** Batches of a room that eat of several cultures, and those that one could feed with nobody shorter or split anew. */
async function splitsOf(question) {
  const { days } = await planFood(question)
  const links = question.cultures.map(({ id }) =>
    question.eaters.map((eater) =>
      days.some(({ gives }) => gives.some((give) => give.cultureId === id && give.eaterId === eater.id)),
    ),
  )
  const missing = ({ eaters }) => total(eaters.map(({ wanted, got }) => wanted - got))
  const most = total(days.map((day, index) => dayWeight(index, days.length) * missing(day)))
  const nothing = (1e-4 * total(question.eaters.flatMap(({ wanted }) => wanted))) / days.length
  const found = { split: 0, needless: 0 }
  for (const eater of question.eaters.keys()) {
    if (links.filter((row) => row[eater]).length < 2) continue
    found.split += 1
    for (const culture of question.cultures.keys()) {
      const alone = links.map((row, index) => row.with(eater, index === culture))
      if ((await leastMissing(question, alone)) > most + nothing) continue
      found.needless += 1
      break
    }
  }
  return found
}

async function reportSplits(rooms) {
  for (const load of [1 / 3, 1 / 2, 0.7]) {
    const found = []
    for (let seed = 1; seed <= rooms; seed += 1)
      found.push(await splitsOf(inventedFood({ seed, cultures: 4, batches: 4, load, futures: 0 })))
    const all = (which) => total(found.map((each) => each[which]))
    console.log(
      `batches that want ${load.toFixed(2)} of what is given: of ${4 * rooms} ${all('split')} split, ${all('needless')} needlessly`,
    )
  }
}

const edges = [0, 0.02, 0.1, 0.2, 0.35, 0.5, 0.7, 0.9, 1.0001]

async function reportCalibration(rooms) {
  const told = []
  for (let seed = 1; seed <= rooms; seed += 1)
    told.push(...(await liveThroughPlan(seed)).filter(({ isEating }) => isEating).map((each) => ({ ...each, seed })))
  console.log(`${rooms} rooms kept by the list, planned on day 20, lived on: days on which larvae ate`)
  console.log('  said            | days | said on average | fell short | interval by rooms')
  for (const [index, from] of edges.slice(0, -1).entries()) {
    const bin = told.filter(({ chance }) => chance >= from && chance < edges[index + 1])
    if (bin.length === 0) continue
    const said = total(bin.map(({ chance }) => chance)) / bin.length
    const short = bin.filter(({ isShort }) => isShort).length / bin.length
    const { lower, upper } = countInterval(bin)
    const percent = (value) => `${(100 * value).toFixed(0)} %`
    console.log(
      `  ${percent(from)} to ${percent(Math.min(1, edges[index + 1]))} | ${bin.length} | ${percent(said)} | ${percent(short)} | ${percent(lower)} to ${percent(upper)}`,
    )
  }
}

export async function run([rooms = '200']) {
  await reportTimes()
  await reportShortfalls(Number(rooms))
  await reportSplits(Number(rooms))
  await reportCalibration(Number(rooms))
}
