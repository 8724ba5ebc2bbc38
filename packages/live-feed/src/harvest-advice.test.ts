import { describe, expect, it } from 'vitest'
import { type CultureEstimate, estimateCulture } from './culture-estimate.ts'
import { fitCulture } from './culture-fit.ts'
import { type CultureForecast, forecastCulture } from './culture-forecast.ts'
import { harvestAdvice } from './harvest-advice.ts'

const history = {
  observations: [80, 120, 175, 250].map((densityPerMl, day) => ({ day, densityPerMl, animalsCounted: 150 })),
  removals: [],
  temperatureC: 26,
  salinity: 20,
  capacityPerMl: 1500,
}
const parameters = fitCulture(history)
const estimate = estimateCulture(history, parameters)
const culture = { estimate, volumeL: 16, ageDays: 10 }

/** A forecast that says only how fast the culture grows. */
function growing(p10: number, p50: number): CultureForecast {
  const growthPerDay = { p05: p10, p10, p25: p10, p50, p75: p50, p90: p50, p95: p50 }
  return { days: [], growthPerDay, futures: 1 }
}

const at = (densityPerMl: number): CultureEstimate => ({ ...estimate, densityPerMl })

describe('harvestAdvice', () => {
  it('takes a fifth from a culture that stands it', () => {
    const advice = harvestAdvice({ ...culture, forecast: growing(0.4, 0.5) })
    expect(advice).toMatchObject({ shareOfVolume: 0.2, reason: 'ready', boundedBy: 'usual' })
    expect(advice.litres).toBeCloseTo(3.2, 12)
    expect(advice.sustainableShare).toBeCloseTo(1 - Math.exp(-0.4), 9)
  })

  it('holds back to what the lower decile of growth puts back', () => {
    const advice = harvestAdvice({ ...culture, forecast: growing(0.1, 0.3) })
    expect(advice.shareOfVolume).toBeCloseTo(1 - Math.exp(-0.1), 9)
    expect(advice).toMatchObject({ reason: 'held-back', boundedBy: 'sustainable' })
  })

  it('takes nothing when the lower decile does not grow', () => {
    expect(harvestAdvice({ ...culture, forecast: growing(-0.1, 0.1) })).toMatchObject({
      litres: 0,
      reason: 'held-back',
    })
  })

  it('takes nothing from a falling culture', () => {
    expect(harvestAdvice({ ...culture, forecast: growing(-0.4, -0.2) })).toMatchObject({ litres: 0, reason: 'falling' })
  })

  it('never takes more than half, whatever is asked', () => {
    const advice = harvestAdvice({ ...culture, usualFraction: 0.9, forecast: growing(3, 4) })
    expect(advice).toMatchObject({ shareOfVolume: 0.5, boundedBy: 'maximum' })
  })

  it('keeps a culture above its floor', () => {
    const advice = harvestAdvice({ ...culture, densityPerMl: 100, floorPerMl: 90, forecast: growing(0.6, 0.8) })
    expect(advice.shareOfVolume).toBeCloseTo(0.1, 12)
    expect(advice.densityAfterPerMl).toBeCloseTo(90, 9)
    expect(advice).toMatchObject({ reason: 'held-back', boundedBy: 'floor' })
    const under = harvestAdvice({ ...culture, densityPerMl: 80, floorPerMl: 90, forecast: growing(0.6, 0.8) })
    expect(under).toMatchObject({ litres: 0, reason: 'too-thin', boundedBy: 'floor' })
  })

  it('waits with the first harvest for three days, 150 per mL and a rise', () => {
    const first = { ...culture, isFirstHarvest: true, forecast: growing(0.4, 0.5) }
    expect(harvestAdvice({ ...first, ageDays: 2 })).toMatchObject({ litres: 0, reason: 'too-young' })
    expect(harvestAdvice({ ...first, densityPerMl: 149 })).toMatchObject({ litres: 0, reason: 'too-thin' })
    expect(harvestAdvice({ ...first, forecast: growing(-0.1, -0.01) })).toMatchObject({
      litres: 0,
      reason: 'not-rising',
    })
    expect(harvestAdvice({ ...first, ageDays: 3, densityPerMl: 150 }).shareOfVolume).toBeCloseTo(0.2, 12)
    expect(harvestAdvice({ ...first, isFirstHarvest: false, densityPerMl: 100 }).shareOfVolume).toBeCloseTo(0.2, 12)
  })

  it('harvests a full vessel that no longer grows: the surplus over half its capacity', () => {
    const full = harvestAdvice({ ...culture, estimate: at(parameters.capacityPerMl), forecast: growing(-0.03, 0) })
    expect(full).toMatchObject({ shareOfVolume: 0.2, reason: 'ready' })
    expect(full.sustainableShare).toBeGreaterThan(0.4)
  })

  it('draws its own forecast under the usual harvest when none is given', () => {
    const own = harvestAdvice({ ...culture, seed: 4 })
    const forecast = forecastCulture({ estimate, plan: { harvestFractionPerDay: 0.2 }, days: 3, seed: 4 })
    expect(own).toEqual(harvestAdvice({ ...culture, forecast }))
    expect(own.shareOfVolume).toBeGreaterThan(0.1)
  })

  it.each([
    ['volumeL', { volumeL: 0 }],
    ['ageDays', { ageDays: -1 }],
    ['densityPerMl', { densityPerMl: Number.NaN }],
    ['floorPerMl', { floorPerMl: -1 }],
    ['usualFraction', { usualFraction: 1 }],
    ['maximumFraction', { maximumFraction: -0.1 }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => harvestAdvice({ ...culture, ...change })).toThrow(argument)
  })
})
