/**
 * `npm run properties -- --times 20 --seed 100`: the tests that make up their own cases, so many times, each with cases that
 * the suite's own seed does not make up. Ends at the first that fails, and says with which seed.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { ensureInstalled, root } from '../apps/standalone/build/project.mjs'
import { ensureClient } from '../apps/standalone/build/steps.mjs'
import { runTool } from './support/steps.mjs'

const options = {
  times: { type: 'string', default: '10' },
  seed: { type: 'string', default: String(Date.now() % 1e6) },
}
const { times, seed } = parseArgs({ options }).values
for (const [name, value] of Object.entries({ times, seed }))
  if (!/^[1-9]\d*$/.test(value)) {
    console.error(`--${name} is ${value}; give a whole number from 1`)
    process.exit(2)
  }
await ensureInstalled()
await ensureClient()
const files = readdirSync(join(root, 'packages'), { recursive: true, encoding: 'utf8' })
  .filter((path) => /^[^/]+\/src\/.*\.test\.ts$/.test(path))
  .map((path) => join('packages', path))
  .filter((path) => readFileSync(join(root, path), 'utf8').includes("from 'fast-check'"))
for (let time = 0; time < Number(times); time += 1) {
  process.env.PROPERTY_SEED = String(Number(seed) + time)
  console.log(`\n== PROPERTY_SEED=${process.env.PROPERTY_SEED}, ${files.length} files`)
  if (!(await runTool('vitest/vitest.mjs', ['run', '--project', 'pure', '--reporter=dot', ...files]))) process.exit(1)
}
