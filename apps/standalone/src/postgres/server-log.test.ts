import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { turnOverLog } from './server-log.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fryward-log-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const grown = () => {
  const log = join(folder, 'server.log')
  writeFileSync(log, 'x'.repeat(10_000_001))
  return log
}

test('a log that has grown large stands beside an empty one', () => {
  const log = grown()
  turnOverLog(log)
  expect([statSync(log).size, readFileSync(`${log}.old`).length]).toEqual([0, 10_000_001])
})

test('one that cannot be copied is emptied all the same, and whoever asked goes on', () => {
  const log = grown()
  mkdirSync(`${log}.old`)
  turnOverLog(log)
  expect(statSync(log).size).toBe(0)
  // What stood in the way is gone, so the next one finds a place.
  writeFileSync(log, 'y'.repeat(10_000_001))
  turnOverLog(log)
  expect(readFileSync(`${log}.old`).length).toBe(10_000_001)
})
