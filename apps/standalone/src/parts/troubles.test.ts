import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { keepTrouble, troublesFileIn } from './troubles.ts'

test('the last trouble of each part is kept, over a file that was cut off too', () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-troubles-'))
  const trouble = (part: string, sentence: string) => ({ part, at: '2026-11-29T07:00:00.000Z', sentence })
  const kept = () => JSON.parse(readFileSync(troublesFileIn(dataDir), 'utf8'))
  keepTrouble(dataDir, trouble('API', 'first'))
  keepTrouble(dataDir, trouble('scheduler', 'other'))
  keepTrouble(dataDir, trouble('API', 'second'))
  expect(kept()).toEqual([trouble('scheduler', 'other'), trouble('API', 'second')])
  writeFileSync(troublesFileIn(dataDir), '[{"part":"API","at"')
  keepTrouble(dataDir, trouble('API', 'after the cut'))
  expect(kept()).toEqual([trouble('API', 'after the cut')])
  rmSync(dataDir, { recursive: true })
  writeFileSync(dataDir, 'a file where a folder was')
  expect(() => keepTrouble(dataDir, trouble('API', 'third'))).not.toThrow()
  rmSync(dataDir)
})
