import { expect, test } from 'vitest'
import { bringOverSteps } from './bring-over.ts'

const steps = (from: number, to: number) =>
  bringOverSteps({ from: { name: 'R1', salinity: from }, to: { name: 'Nursery', salinity: to }, volumeL: 2 })

// An abrupt change of more than 5 harms rotifers: Treece & Davis 2000, SRAC Publication 701.
test('rotifers are brought over in three parts, after which no more than 5 of the difference is left', () => {
  expect(steps(25, 30)).toEqual([])
  expect(steps(30, 25)).toEqual([])
  for (const [from, to] of [
    [25, 30.5],
    [10, 35],
    [35, 5],
    [0, 40],
  ] as const) {
    const [rinse, add] = steps(from, to)
    expect(add?.text).toContain('three times')
    const startL = rinse?.quantities.start?.value ?? 0
    const eachL = add?.quantities.each?.value ?? 0
    const left = (Math.abs(from - to) * startL) / (startL + 3 * eachL)
    // To what a jug shows.
    expect(left, `${from} to ${to}`).toBeLessThanOrEqual(5.1)
    expect(eachL, `${from} to ${to}`).toBeLessThan(startL * 3)
  }
  expect(steps(10, 35)[0]?.quantities.start).toEqual({ value: 0.5, unit: 'L' })
})
