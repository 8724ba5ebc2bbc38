import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { createWaitingLine } from './waiting-line.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

const lineOf = (more: Partial<Parameters<typeof createWaitingLine>[0]> = {}) =>
  createWaitingLine({ atOnce: 1, mostWaiting: 10, longestWaitMs: 1000, ...more })

/** Who has been let in so far, in their order. */
function comers(line: ReturnType<typeof lineOf>) {
  const served: string[] = []
  return {
    served,
    come: (lane: string) =>
      line.enter(lane).then(
        () => served.push(lane),
        (error) => served.push(`${lane} ${error.code}`),
      ),
    turns: async (count: number) => {
      for (let turn = 0; turn < count; turn += 1) {
        line.leave()
        await vi.advanceTimersByTimeAsync(0)
      }
    },
  }
}

test('turns go round among those who wait, and each of them keeps their own order', async () => {
  const line = lineOf()
  const { served, come, turns } = comers(line)
  for (const lane of ['busy', 'busy', 'busy', 'busy', 'other', 'third', 'other']) void come(lane)
  await turns(6)
  expect(served).toEqual(['busy', 'busy', 'other', 'third', 'busy', 'other', 'busy'])
  expect(line.isEmpty()).toBe(false)
  await turns(1)
  expect(line.isEmpty()).toBe(true)
})

test('no more are at work at once than may be', async () => {
  const line = lineOf({ atOnce: 2 })
  const { served, come, turns } = comers(line)
  for (const lane of ['a', 'b', 'c', 'd']) void come(lane)
  await vi.advanceTimersByTimeAsync(0)
  expect(served).toEqual(['a', 'b'])
  await turns(1)
  expect(served).toEqual(['a', 'b', 'c'])
})

test('whoever comes when the line is full, or waits for too long, is told that it is busy', async () => {
  const line = lineOf({ mostWaiting: 2 })
  const { served, come, turns } = comers(line)
  for (const lane of ['a', 'b', 'c', 'd']) void come(lane)
  await vi.advanceTimersByTimeAsync(0)
  expect(served).toEqual(['a', 'd busy'])
  await vi.advanceTimersByTimeAsync(999)
  expect(served).toHaveLength(2)
  await vi.advanceTimersByTimeAsync(1)
  expect(served.slice(2)).toEqual(['b busy', 'c busy'])
  // Those who gave up take no turn: the next comer has it at once.
  await turns(1)
  expect(line.isEmpty()).toBe(true)
  void come('e')
  await vi.advanceTimersByTimeAsync(0)
  expect(served.at(-1)).toBe('e')
})
