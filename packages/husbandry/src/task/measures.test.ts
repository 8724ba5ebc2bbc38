import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measuredDose } from './measured-dose.ts'
import {
  measurableG,
  measurableGUp,
  measurableL,
  measurableLDown,
  measurableLUp,
  measurableMl,
  roundAnimals,
} from './measures.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

describe('what can be measured', () => {
  test('a syringe shows tenths under 10 mL and halves under 60, a jug tens under a litre', () => {
    expect([2.68, 9.96, 12.3, 59.8, 77.9, 533, 1234].map(measurableMl)).toEqual([2.7, 10, 12.5, 60, 80, 530, 1200])
  })
  test('a jug shows 10 mL under a litre and a tenth of a litre above, a scale tenths of a gram under 100', () => {
    expect([0.456, 3.64, 12.34].map(measurableL)).toEqual([0.46, 3.6, 12.3])
    expect([0.459, 3.69].map(measurableLDown)).toEqual([0.45, 3.6])
    expect([0.278, 99.94, 123.6].map(measurableG)).toEqual([0.3, 99.9, 124])
  })
  test('from a mark on the next coarser steps hold: 10, 60 and 1000 mL, a litre, 100 g', () => {
    expect([9.94, 10.2, 59.7, 60.4, 994, 1040].map(measurableMl)).toEqual([9.9, 10, 59.5, 60, 990, 1000])
    expect([10, 60, 1000].map((mL) => measurableMl(mL + 0.3))).toEqual([10.5, 60, 1000])
    expect([0.994, 1.04].map(measurableL)).toEqual([0.99, 1])
    expect([0.996, 1.04, 1, 0.3].map(measurableLDown)).toEqual([0.99, 1, 1, 0.3])
    expect([99.96, 100.4, 100].map(measurableG)).toEqual([100, 100, 100])
  })
  test('what must not run short is poured up to the next mark: 10 mL under a litre, a tenth of a litre above', () => {
    expect([0, 0.451, 0.3, 0.996, 1, 1.389, 2.71, 2.7].map(measurableLUp)).toEqual([0, 0.46, 0.3, 1, 1, 1.4, 2.8, 2.7])
  })
  test('what must not run short is weighed up to the next mark, and a whole number of marks as it is', () => {
    expect([0.21, 0.3, 2.7, 99.91, 100.2, 123].map(measurableGUp)).toEqual([0.3, 0.3, 2.7, 100, 101, 123])
    fc.assert(
      fc.property(between(0, 200), (grams) => {
        const more = measurableGUp(grams) - grams
        expect(more).toBeGreaterThan(-1e-6)
        expect(more).toBeLessThan(grams < 100 ? 0.1 : 1)
      }),
    )
  })
  test('animals are told to two figures', () => {
    expect([0, -3, 0.4, 1, 7, 10, 99, 104, 123_456, 55_556].map(roundAnimals)).toEqual([
      ...[0, 0, 0, 1, 7, 10, 99, 100, 120_000, 56_000],
    ])
  })
  test('no amount is moved by more than one mark, and rounding down never adds', () => {
    fc.assert(
      fc.property(between(0, 5000), (value) => {
        expect(Math.abs(measurableMl(value) - value)).toBeLessThanOrEqual(
          value < 10 ? 0.051 : value < 60 ? 0.251 : value < 1000 ? 5.01 : 50.01,
        )
        expect(measurableLDown(value)).toBeLessThanOrEqual(value + 1e-6)
      }),
    )
  })
  test('a dose under the first mark keeps its concentrate: diluted ten or a hundred times', () => {
    expect(measuredDose(0.046)).toEqual({ amountMl: 0.5, dilution: 10 })
    expect(measuredDose(0.0046)).toEqual({ amountMl: 0.5, dilution: 100 })
    expect([0.1, 0.099, 0.01, 0.0099].map((mL) => measuredDose(mL).dilution)).toEqual([1, 10, 10, 100])
    // Less than the first mark of the thinnest is that mark.
    expect(measuredDose(0.0001)).toEqual({ amountMl: 0.1, dilution: 100 })
    fc.assert(
      fc.property(between(0.002, 50), (mL) => {
        const { amountMl, dilution } = measuredDose(mL)
        expect(Math.abs(amountMl / dilution - mL)).toBeLessThanOrEqual(Math.max(0.5 * mL, 0.0006))
      }),
    )
  })
})
