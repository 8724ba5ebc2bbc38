/**
 * `npm run mutants [package, write-frame or path ...] [-- --one-in 12 --seed 1 --near]` changes the sources a little in thousands of
 * places, one at a time, and asks whether a test notices. Prints what none noticed and the share that was, by word; the
 * report with every change lies in tests/.output/mutants. Without words: every pure package. `room` means what of that package
 * waits for nothing. A path may end in lines: `…/ration.ts:20-40`. With --one-in only every so-maniest function and constant is
 * changed (tests/mutants/sample.mjs). With --near only the tests under the folders that are named are asked, which is several times
 * quicker: what none but tests elsewhere would notice counts as missed, so the share is rather too low.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { Stryker } from '@stryker-mutator/core'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensureClient } from '../../apps/standalone/build/steps.mjs'
import { alsoChangeNumbers } from './numbers.mjs'
import { choose, chosen } from './sample.mjs'
import { printScores } from './scores.mjs'

const PURE = ['seawater', 'survival', 'lineage', 'live-feed', 'planner', 'husbandry']
const ROOM = 'packages/room/src'
const FRAME = `${ROOM}/frame`

const sourcesUnder = (folder) => [
  `${folder}/**/*.ts`,
  `!${folder}/**/*.test.ts`,
  `!${folder}/testing/**`,
  `!${folder}/**/index.ts`,
]

/** Use cases wait for the database; what of their package does not is pure, or as good as that, and tested without one. */
const withoutWaiting = (folder) =>
  readdirSync(join(root, folder), { recursive: true })
    .map((file) => `${folder}/${file}`)
    .filter((path) => /(?<!\.test|\/index)\.ts$/.test(path) && !path.includes('/testing/'))
    .filter((path) => !/\b(async|Promise)\b/.test(readFileSync(join(root, path), 'utf8')))

/** The sources that a word of the command means. */
function sourcesOf(word) {
  if (word === 'room') return withoutWaiting(ROOM)
  if (PURE.includes(word)) return sourcesUnder(`packages/${word}/src`)
  if (word === 'write-frame') return sourcesUnder(FRAME)
  const path = word.replace(/:\d[\d:-]*$/, '')
  if (!existsSync(join(root, path))) {
    console.error(
      `There is no ${word} here; name ${PURE.join(', ')}, room, write-frame, or a file or folder from the root.`,
    )
    process.exit(2)
  }
  return /\.ts$/.test(path) ? [word] : sourcesUnder(path.replace(/\/$/, ''))
}

const options = {
  'one-in': { type: 'string', default: '1' },
  seed: { type: 'string', default: '1' },
  near: { type: 'boolean', default: false },
}
const { values, positionals: words } = parseArgs({ options, allowPositionals: true })
const { near, ...numbers } = values
for (const [name, value] of Object.entries(numbers))
  if (!/^[1-9]\d*$/.test(value)) {
    console.error(`--${name} is ${value}; give a whole number from 1`)
    process.exit(2)
  }
choose({ oneIn: Number(values['one-in']), seed: values.seed })
const sourcesByWord = new Map((words.length === 0 ? PURE : words).map((word) => [word, sourcesOf(word)]))
const folders = words.map((word) => word.replace(/\/?([^/]*\.ts.*)?$/, ''))
if (near && (words.length === 0 || folders.some((folder) => !existsSync(join(root, folder))))) {
  console.error('--near goes with folders or files by their paths')
  process.exit(2)
}
const mutate = [...sourcesByWord.values()].flat()
await ensureClient()
await alsoChangeNumbers()

// The use cases are tested on PostgreSQL: their files run by the server's tests, the frame by its own.
const isServer = mutate.some((path) => path.startsWith(ROOM)) && !sourcesByWord.has('room')
const isFrame = mutate.every((path) => path.replace('!', '').startsWith(FRAME))
process.env.MUTANTS_TESTS = isFrame ? 'frame' : isServer ? 'server' : 'pure'
const packages = [...new Set(mutate.flatMap((path) => path.match(/^packages\/([a-z-]+)/)?.[1] ?? []))]
process.env.MUTANTS_PACKAGES = packages.length === 1 ? packages[0] : `{${packages.join(',')}}`
if (near) process.env.MUTANTS_TESTS_UNDER = folders.join(',')
process.chdir(root)
const output = `tests/.output/mutants/${words.join('_').replaceAll(/[/:]/g, '-') || 'all'}`

const ours = (file) => fileURLToPath(new URL(file, import.meta.url))
const results = await new Stryker({
  mutate,
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner', ours('sample.mjs'), ours('missed.mjs')],
  ignorers: ['sample'],
  vitest: { configFile: 'tests/mutants/vitest.config.ts' },
  coverageAnalysis: 'perTest',
  concurrency: Number(process.env.MUTANTS_AT_ONCE ?? 1),
  // An endless loop is noticed by counting, unless it is empty; time alone says as much about the machine.
  timeoutMS: isServer ? 120_000 : 30_000,
  // The compiler's own settings are not needed: nothing is compiled, and it has no door that this could use.
  tsconfigFile: 'none',
  disableTypeChecks: false,
  tempDirName: 'tests/.output/mutants-work',
  ignorePatterns: ['.data', '.next', 'dist', 'apps/web', 'tests/.output', '*.tsbuildinfo'],
  reporters: ['missed', 'progress-append-only', 'html', 'json'],
  htmlReporter: { fileName: `${output}/report.html` },
  jsonReporter: { fileName: `${output}/report.json` },
  allowEmpty: false,
}).runMutationTest()

/** The word that a file was changed for. */
const wordOf = (file) =>
  [...sourcesByWord].find(([, sources]) =>
    sources.some((source) => file.startsWith(source.replace(/\*.*|:.*/, ''))),
  )?.[0]
printScores(results, chosen, wordOf)
