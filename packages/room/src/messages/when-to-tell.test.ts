import { expect, test } from 'vitest'
import { areOwnersTold, isTimeToTell, type Telling } from './when-to-tell.ts'

const minutes = (number: number) => number * 60_000
const telling = (part: Partial<Telling> = {}): Telling => ({
  ...{ raisedAt: 0, isAcknowledged: false, quietUntil: null, lastAt: null, isUnreached: false, isHandedUntold: false },
  ...part,
})

test('an alarm is told at once, every ten minutes for an hour, and then every hour', () => {
  const told: number[] = []
  let lastAt: number | null = null
  for (let minute = 0; minute <= 250; minute += 1)
    if (isTimeToTell(telling({ lastAt }), minutes(minute))) {
      told.push(minute)
      lastAt = minutes(minute)
    }
  expect(told).toEqual([0, 10, 20, 30, 40, 50, 60, 120, 180, 240])
})

test('nobody is told again of what somebody has, or while it is to be quiet', () => {
  expect(isTimeToTell(telling({ isAcknowledged: true }), minutes(30))).toBe(false)
  const quiet = telling({ lastAt: 0, quietUntil: minutes(60) })
  expect([59, 60].map((minute) => isTimeToTell(quiet, minutes(minute)))).toEqual([false, true])
})

test('where nobody was reached it is told again after two minutes, and to the owners', () => {
  const unreached = telling({ lastAt: 0, isUnreached: true })
  expect([1, 2].map((minute) => isTimeToTell(unreached, minutes(minute)))).toEqual([false, true])
  expect(areOwnersTold(unreached, minutes(2))).toBe(true)
  expect([19, 20].map((minute) => areOwnersTold(telling({ lastAt: 0 }), minutes(minute)))).toEqual([false, true])
})

test('whoever it is handed to is told at once', () => {
  expect(isTimeToTell(telling({ lastAt: minutes(9), isHandedUntold: true }), minutes(10))).toBe(true)
})
