import { describe, expect, it } from 'vitest'
import { dayMs, hourMs } from '../calendar/elapsed.ts'
import { findSpecies } from '../species/index.ts'
import { type HatchForecast, hatchNights } from './hatch-nights.ts'
import type { PastDuration } from './pair-history.ts'
import { developmentRate } from './rate.ts'

// Simulated pairs: each has its own level, each clutch its own scatter and temperature; hatching is counted to a night.
const species = findSpecies('amphiprion-ocellaris')!
const { incubation } = species
const hatchHour = 20.5
const clutchesPerPair = 8
const pairCount = 300

/** Mulberry32: uniform on [0, 1), seeded. */
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

const normal = (uniform: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())

interface Clutch {
  spawnedAt: string
  temperatureC: number
  hatchedOn: string
  past: PastDuration
}

/** A clutch spawned at a random morning hour that hatches in the night nearest to its duration. */
function spawnClutch(uniform: () => number, pairLogDays: number, withinSd: number): Clutch {
  const temperatureC = 26 + 2.5 * uniform()
  const spawnedMs = Date.parse('2026-03-02T00:00:00Z') + (9 + 4 * uniform()) * hourMs
  const days = Math.exp(pairLogDays + withinSd * normal(uniform)) / developmentRate(incubation, temperatureC)
  const night = Math.round((spawnedMs + days * dayMs - hatchHour * hourMs) / dayMs)
  const hatchedMs = night * dayMs + hatchHour * hourMs
  return {
    spawnedAt: new Date(spawnedMs).toISOString(),
    temperatureC,
    hatchedOn: new Date(night * dayMs).toISOString().slice(0, 10),
    past: { durationDays: (hatchedMs - spawnedMs) / dayMs, temperatureC },
  }
}

const predict = (clutch: Clutch, pairHistory: readonly PastDuration[]): HatchForecast =>
  hatchNights({
    spawnedAt: clutch.spawnedAt,
    temperatures: [{ at: clutch.spawnedAt, temperatureC: clutch.temperatureC }],
    lightsOff: { time: '19:00', timeZone: 'UTC' },
    species,
    pairHistory,
  })

interface Outcome {
  score: number
  isHeld: boolean
  /** Probability that the forecast itself gives to its 80 % window, which whole nights widen. */
  stated: number
  windowNights: number
}

function outcomeOf(forecast: HatchForecast, hatchedOn: string): Outcome {
  const { from, to } = forecast.window80
  const inWindow = forecast.nights.filter(({ date }) => date >= from && date <= to)
  return {
    score: Math.log(forecast.nights.find(({ date }) => date === hatchedOn)?.probability ?? 1e-12),
    isHeld: hatchedOn >= from && hatchedOn <= to,
    stated: inWindow.reduce((sum, { probability }) => sum + probability, 0),
    windowNights: inWindow.length,
  }
}

/** Outcomes by clutch number, the first having no history. */
function simulate(withinSd: number, seed: number): Outcome[][] {
  const uniform = seeded(seed)
  const byNumber: Outcome[][] = Array.from({ length: clutchesPerPair }, () => [])
  for (let pair = 0; pair < pairCount; pair++) {
    const logDays = Math.log(incubation.medianDays.value) + incubation.spreadBetweenPairs.value * normal(uniform)
    const history: PastDuration[] = []
    for (const outcomes of byNumber) {
      const clutch = spawnClutch(uniform, logDays, withinSd)
      outcomes.push(outcomeOf(predict(clutch, history), clutch.hatchedOn))
      history.push(clutch.past)
    }
  }
  return byNumber
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
const scores = (byNumber: Outcome[][]) => byNumber.map((outcomes) => mean(outcomes.map(({ score }) => score)))

describe('learning from a pair, on 300 simulated pairs of 8 clutches', () => {
  const byNumber = simulate(incubation.spreadWithinPair.value, 20261125)

  it('scores better with one past clutch, and better still with seven', () => {
    const score = scores(byNumber)
    expect(score[1]! - score[0]!).toBeGreaterThan(0.2)
    expect(score[7]! - score[0]!).toBeGreaterThan(0.35)
    expect(mean(score.slice(5))).toBeGreaterThan(mean(score.slice(1, 3)))
  })

  it('narrows its window as it learns', () => {
    const widths = byNumber.map((outcomes) => mean(outcomes.map(({ windowNights }) => windowNights)))
    expect(widths[7]).toBeLessThan(0.7 * widths[0]!)
  })

  it('holds at every clutch number what its 80 % window states, within four standard errors', () => {
    for (const outcomes of byNumber) {
      const held = mean(outcomes.map(({ isHeld }) => (isHeld ? 1 : 0)))
      const stated = mean(outcomes.map((outcome) => outcome.stated))
      expect(stated).toBeGreaterThanOrEqual(0.8)
      expect(Math.abs(held - stated)).toBeLessThan(4 * Math.sqrt((stated * (1 - stated)) / outcomes.length))
    }
  })

  it('still gains from history when clutches scatter half as much again as assumed', () => {
    const score = scores(simulate(1.5 * incubation.spreadWithinPair.value, 7))
    expect(mean(score.slice(4)) - score[0]!).toBeGreaterThan(0.15)
  })

  it('does not grow falsely sure of a pair that scatters twice as much as assumed', () => {
    const wild = simulate(2 * incubation.spreadWithinPair.value, 3)
    const score = scores(wild)
    expect(mean(score.slice(5))).toBeGreaterThan(score[0]!)
    const held = (outcomes: Outcome[]) => mean(outcomes.map(({ isHeld }) => (isHeld ? 1 : 0)))
    expect(mean(wild.slice(5).map(held))).toBeGreaterThan(0.8)
  })

  it('beats a uniform guess over nights 4 to 12 from the first clutch on', () => {
    for (const score of scores(byNumber)) expect(score).toBeGreaterThan(Math.log(1 / 9))
  })
})
