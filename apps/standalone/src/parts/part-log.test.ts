import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PassThrough } from 'node:stream'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { PartLog } from './part-log.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fryward-log-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const sizes = () => readdirSync(folder).map((name) => statSync(join(folder, name)).size)

test('a log turns over while it is written and keeps two old ones', async () => {
  const output = new PassThrough()
  new PartLog(join(folder, 'api.log'), '10K').follow(output)
  for (let line = 0; line < 100; line += 1) {
    output.write(`${String(line).padStart(999, '.')}\n`)
    await new Promise((resolve) => setImmediate(resolve))
  }
  await expect.poll(() => readdirSync(folder).sort()).toEqual(['api.1.log', 'api.2.log', 'api.log'])
  const newest = () => ['api.1.log', 'api.log'].map((name) => readFileSync(join(folder, name), 'utf8')).join('')
  await expect.poll(newest).toContain('...99\n')
  expect(Math.max(...sizes())).toBeLessThan(20_000)
})

test('a log that cannot be written loses its lines and stops nobody', async () => {
  mkdirSync(join(folder, 'api.log'))
  const output = new PassThrough()
  new PartLog(join(folder, 'api.log')).follow(output)
  let taken = 0
  for (let line = 0; line < 50; line += 1) {
    output.write(`${line}\n`, () => {
      taken += 1
    })
    await new Promise((resolve) => setImmediate(resolve))
  }
  await expect.poll(() => taken).toBe(50)
})

test('the last line that explains anything is found in either kind of log', async () => {
  const output = new PassThrough()
  const log = new PartLog(join(folder, 'api.log'))
  log.follow(output)
  expect(log.lastWords()).toBe('')
  output.write('{"level":30,"msg":"listening"}\n{"level":60,"msg":"no more memory"}\nnode internals\n')
  await expect.poll(() => log.lastWords()).toBe(': no more memory')
})
