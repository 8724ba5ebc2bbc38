import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import type { Part } from '../../apps/standalone/src/parts/part.ts'

const folder = mkdtempSync(join(tmpdir(), 'fryward-part-'))
const modulePath = join(folder, 'part.mjs')
const environment: Record<string, string> = {}
const told: string[] = []
let part: Part
const soon = { timeout: 60_000 }

beforeAll(async () => {
  await ensurePrograms()
  writeFileSync(modulePath, 'process.send({ ready: true }); setInterval(() => {}, 1000)')
  const compiled: { Part: typeof Part } = await import(join(root, 'apps/standalone/dist/parts/part.js'))
  const onRestart = (sentence: string) => told.push(sentence)
  part = new compiled.Part({ name: 'API', modulePath, environment, logFile: join(folder, 'api.log'), onRestart })
})
afterAll(async () => {
  await part.stop()
  rmSync(folder, { recursive: true })
})

it('a part that the machine will not start again for a while is tried on, and comes back once it will', async () => {
  await part.start()
  const first = part.pid
  // Longer than any system takes, which refuses to start a process with it: execve(2), MAX_ARG_STRLEN.
  environment.TOO_LONG = 'x'.repeat(8 << 20)
  process.kill(first ?? 0, 'SIGKILL')
  const refusals = () => told.filter((sentence) => /could not be started/.test(sentence)).length
  await expect.poll(refusals, soon).toBeGreaterThan(1)
  expect(part.pid).toBeUndefined()
  delete environment.TOO_LONG
  await expect.poll(() => part.pid, soon).toBeTypeOf('number')
  expect(part.pid).not.toBe(first)
})
