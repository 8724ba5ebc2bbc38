import { describe, expect, it } from 'vitest'
import { predictPair } from './pair-level.ts'

const prior = { medianDays: 7, spreadBetweenPairs: 0.12, spreadWithinPair: 0.05 }

describe('predictPair', () => {
  it('is the prior without history', () => {
    const { logMean, logSd } = predictPair(prior, [])
    expect(logMean).toBeCloseTo(Math.log(7), 12)
    expect(logSd).toBeCloseTo(0.13, 12)
  })

  it('weighs one past clutch by its own variance, whole nights included', () => {
    const observed = 0.05 ** 2 + 1 / 12 / 64
    const share = 0.12 ** 2 / (0.12 ** 2 + observed)
    const { logMean, logSd } = predictPair(prior, [8])
    expect(logMean).toBeCloseTo(Math.log(7) + share * Math.log(8 / 7), 12)
    expect(logSd).toBeCloseTo(Math.sqrt((1 - share) * 0.12 ** 2 + 0.05 ** 2), 12)
  })

  it("comes to the pair's own mean with a long even history", () => {
    const { logMean, logSd } = predictPair(
      prior,
      Array.from({ length: 200 }, () => 8),
    )
    expect(Math.exp(logMean)).toBeCloseTo(8, 1)
    expect(logSd).toBeLessThan(0.05)
  })

  it('widens for a pair whose clutches scatter, beyond what counting whole nights explains', () => {
    const even = predictPair(prior, [7, 8, 7, 8, 7, 8])
    const scattered = predictPair(prior, [6, 9, 6, 9, 6, 9])
    expect(scattered.logSd).toBeGreaterThan(1.5 * even.logSd)
  })
})
