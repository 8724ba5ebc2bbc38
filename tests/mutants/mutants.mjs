/**
 * `npm run mutants [package, write-frame or path ...]` changes the sources a little in thousands of places, one at a time,
 * and asks whether a test notices. Prints what none noticed and the share that was, by package; the report with every
 * change lies in tests/.output/mutants. Without words: every pure package. A path may end in lines: `…/ration.ts:20-40`.
 */
import { existsSync } from 'node:fs'
import { join, relative } from 'node:path'
import { Stryker } from '@stryker-mutator/core'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensureClient } from '../../apps/standalone/build/steps.mjs'

const PURE = ['seawater', 'survival', 'lineage', 'live-feed', 'planner', 'husbandry']
const FRAME = 'packages/room/src/work'
const output = 'tests/.output/mutants'

const sourcesUnder = (folder) => [
  `${folder}/**/*.ts`,
  `!${folder}/**/*.test.ts`,
  `!${folder}/testing/**`,
  `!${folder}/**/index.ts`,
]

/** The sources that a word of the command means. */
function sourcesOf(word) {
  if (PURE.includes(word)) return sourcesUnder(`packages/${word}/src`)
  if (word === 'write-frame') return sourcesUnder(FRAME)
  const path = word.replace(/:\d[\d:-]*$/, '')
  if (!existsSync(join(root, path))) {
    console.error(`There is no ${word} here; name ${PURE.join(', ')}, write-frame, or a file or folder from the root.`)
    process.exit(2)
  }
  return /\.ts$/.test(path) ? [word] : sourcesUnder(path.replace(/\/$/, ''))
}

const words = process.argv.slice(2)
const mutate = (words.length === 0 ? PURE : words).flatMap(sourcesOf)
await ensureClient()

// The use cases are tested on PostgreSQL, which each try would start anew: their files run by the server's tests.
const isServer = mutate.some((path) => path.startsWith('packages/room'))
process.env.MUTANTS_TESTS = isServer ? 'server' : 'pure'
const packages = [...new Set(mutate.flatMap((path) => path.match(/^packages\/([a-z-]+)/)?.[1] ?? []))]
process.env.MUTANTS_PACKAGES = packages.length === 1 ? packages[0] : `{${packages.join(',')}}`
process.chdir(root)

const results = await new Stryker({
  mutate,
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutants/vitest.config.ts' },
  coverageAnalysis: 'perTest',
  concurrency: Number(process.env.MUTANTS_AT_ONCE ?? 1),
  // An endless loop is noticed by counting; time alone says as much about the machine.
  timeoutMS: 120_000,
  // The compiler's own settings are not needed: nothing is compiled, and it has no door that this could use.
  tsconfigFile: 'none',
  disableTypeChecks: false,
  tempDirName: 'tests/.output/mutants-work',
  ignorePatterns: ['.data', '.next', 'dist', 'apps/web', 'tests/.output', '*.tsbuildinfo'],
  reporters: ['clear-text', 'progress-append-only', 'html', 'json'],
  clearTextReporter: { allowColor: process.stdout.isTTY, logTests: false, reportTests: false, reportScoreTable: false },
  htmlReporter: { fileName: `${output}/report.html` },
  jsonReporter: { fileName: `${output}/report.json` },
  allowEmpty: false,
}).runMutationTest()

report(results)

function report(mutants) {
  const parts = Map.groupBy
    ? Map.groupBy(mutants, partOf)
    : mutants.reduce((map, mutant) => map.set(partOf(mutant), [...(map.get(partOf(mutant)) ?? []), mutant]), new Map())
  for (const [part, those] of parts) {
    const count = (...statuses) => those.filter(({ status }) => statuses.includes(status)).length
    const noticed = count('Killed', 'Timeout')
    const tried = noticed + count('Survived', 'NoCoverage')
    console.log(
      `${part}: ${((noticed / tried) * 100).toFixed(1)} % noticed (${noticed} of ${tried}; ${count('NoCoverage')} that no test runs)`,
    )
  }
}

function partOf({ fileName }) {
  const path = relative(root, fileName)
  return path.startsWith(FRAME) ? 'write-frame' : path.split('/').slice(0, 2).join('/')
}
