/** Filter and forecast of a culture, and a pedigree of 10,000, each against a straightforward reference in this run. */
import assert from 'node:assert/strict'
import { performance } from 'node:perf_hooks'
import { relationships } from '@fryward/lineage'
import { estimateCulture, fitCulture, forecastCulture, seededRandom } from '@fryward/live-feed'
import { filterPlainly, forecastPlainly } from './reference-culture.mjs'
import { inbreedingByTable } from './reference-pedigree.mjs'

const DAYS = 60
const FUTURES = 500
const ANIMALS = 10_000

/** Median time of some runs, ms, after one to warm up. */
function timed(runs, work) {
  const result = work()
  const times = Array.from({ length: runs }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  }).sort((a, b) => a - b)
  return { result, ms: times[Math.floor(runs / 2)] }
}

function line(what, ours, reference) {
  const ratio = (reference / ours).toFixed(1)
  console.log(
    `${what.padEnd(44)} ${ours.toFixed(1).padStart(9)} ms ${reference.toFixed(1).padStart(9)} ms ${ratio.padStart(7)} x`,
  )
}

function makeHistory() {
  const random = seededRandom(60)
  let logDensity = Math.log(120)
  const rows = Array.from({ length: DAYS }, (_, day) => {
    const row = {
      densityPerMl: Math.exp(logDensity + 0.12 * random.normal()),
      animalsCounted: 100,
      harvested: day > 5 ? 0.2 : 0,
    }
    logDensity += Math.log(1 - row.harvested) + 0.6 * (1 - Math.exp(logDensity) / 700) + 0.1 * random.normal()
    return row
  })
  return {
    rows,
    history: {
      observations: rows.map(({ densityPerMl, animalsCounted }, day) => ({ day, densityPerMl, animalsCounted })),
      removals: rows.flatMap(({ harvested }, day) => (harvested > 0 ? [{ day, fraction: harvested }] : [])),
      temperatureC: 25,
      salinity: 20,
    },
  }
}

function benchCulture() {
  const { rows, history } = makeHistory()
  const fit = timed(5, () => fitCulture(history))
  // The reference takes its rates as certain, so the package is given certain ones here.
  const certain = fit.result.logCovariance.map((row, i) => row.map((_, j) => (i === j ? 1e-12 : 0)))
  const parameters = { ...fit.result, logCovariance: certain }
  const plan = { harvestFractionPerDay: 0.2 }
  const ours = timed(9, () => {
    const estimate = estimateCulture(history, parameters)
    return { estimate, forecast: forecastCulture({ estimate, plan, days: DAYS, seed: 1, futures: FUTURES }) }
  })
  const { normal } = seededRandom(2)
  const plain = timed(3, () => {
    const { state, covariance } = filterPlainly(rows, parameters)
    const settings = { state, covariance, rates: parameters, ...plan, days: DAYS, futures: FUTURES, normal }
    return { state, medians: forecastPlainly(settings) }
  })
  // Fifty Euler steps and five hundred futures: the two agree within a few per cent, or one of them is wrong.
  assert.ok(Math.abs(ours.result.estimate.state.logDensity - plain.result.state[0]) < 0.02)
  for (const [k, median] of plain.result.medians.entries()) {
    const ratio = ours.result.forecast.days[k].p50 / median
    assert.ok(ratio > 0.9 && ratio < 1.1, `day ${k + 1}: medians ${ratio} apart`)
  }
  line(`culture: ${DAYS} counts, ${DAYS} days, ${FUTURES} futures`, ours.ms, plain.ms)
  console.log(`${'culture: fit of those counts, no reference'.padEnd(44)} ${fit.ms.toFixed(1).padStart(9)} ms`)
}

function makePedigree() {
  const random = seededRandom(10)
  const founders = 50
  const generation = 500
  const draw = (from, to) => from + Math.floor(random.uniform() * (to - from))
  const sires = []
  const dams = []
  for (let i = 0; i < ANIMALS; i += 1) {
    const from = Math.max(0, i - generation)
    const sire = i < founders ? -1 : draw(from, i)
    let dam = i < founders ? -1 : draw(from, i)
    while (dam >= 0 && dam === sire) dam = draw(from, i)
    sires.push(sire)
    dams.push(dam)
  }
  const name = (index) => `fish-${index}`
  const pedigree = sires.map((sire, i) =>
    sire < 0 ? { id: name(i) } : { id: name(i), sireId: name(sire), damId: name(dams[i]) },
  )
  return { sires, dams, pedigree }
}

function benchPedigree() {
  const { sires, dams, pedigree } = makePedigree()
  const ours = timed(3, () => {
    const related = relationships(pedigree)
    return pedigree.map(({ id }) => related.inbreeding(id))
  })
  const plain = timed(1, () => inbreedingByTable(sires, dams))
  for (const [i, inbreeding] of plain.result.entries()) assert.ok(Math.abs(inbreeding - ours.result[i]) < 1e-4)
  line(`pedigree: inbreeding of ${ANIMALS} animals`, ours.ms, plain.ms)
}

export function run() {
  console.log(`${''.padEnd(44)} ${'here'.padStart(12)} ${'reference'.padStart(12)} ${'faster'.padStart(8)}`)
  benchCulture()
  benchPedigree()
}
