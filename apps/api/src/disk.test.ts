import { tmpdir } from 'node:os'
import { expect, test } from 'vitest'
import { readSpace, watchDisk } from './disk.ts'

test('a disk is asked every five seconds at most, and said to be full before it is', async () => {
  let now = 0
  let freeBytes = 5e9
  let asked = 0
  const read = async () => {
    asked += 1
    return { freeBytes, totalBytes: 10e9 }
  }
  const disk = watchDisk(read, () => now)
  expect(await disk.look()).toEqual({ state: 'plenty', freeBytes: 5e9, totalBytes: 10e9 })
  freeBytes = 1.9e9
  now = 4999
  expect((await disk.look())?.state).toBe('plenty')
  now = 5000
  expect((await disk.look())?.state).toBe('little')
  freeBytes = 199e6
  now = 10_000
  expect((await disk.look())?.state).toBe('full')
  expect(asked).toBe(3)
})

test('a real folder has some room on a disk of some size', async () => {
  const { freeBytes, totalBytes } = await readSpace(tmpdir())()
  expect(freeBytes).toBeGreaterThan(0)
  expect(totalBytes).toBeGreaterThanOrEqual(freeBytes)
})
