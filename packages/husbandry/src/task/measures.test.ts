import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measuredDose } from './measured-dose.ts'
import { measurableG, measurableL, measurableLDown, measurableMl, roundAnimals } from './measures.ts'

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
  test('animals are told to two figures', () => {
    expect([0, 7, 123_456, 55_556].map(roundAnimals)).toEqual([0, 7, 120_000, 56_000])
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
    fc.assert(
      fc.property(between(0.002, 50), (mL) => {
        const { amountMl, dilution } = measuredDose(mL)
        expect(Math.abs(amountMl / dilution - mL)).toBeLessThanOrEqual(Math.max(0.5 * mL, 0.0006))
      }),
    )
  })
})
