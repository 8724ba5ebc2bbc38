// npm test: everything, from a fresh clone. `npm test -- server` runs one project's tests only (pure, dom, server, browser).
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { ensureInstalled, root } from '../apps/standalone/build/project.mjs'
import { ensureClient, ensureDashboard, ensurePrograms } from '../apps/standalone/build/steps.mjs'
import { checkFormatAndLint, checkTypesOfDashboard, checkTypesOfPackages, runPart, runTool } from './support/steps.mjs'
import { REPORT_VARIABLE } from './support/test-report.mjs'

const PROJECTS = ['pure', 'dom', 'server', 'browser']
const asked = process.argv.slice(2)
const unknown = asked.find((name) => !PROJECTS.includes(name))
if (unknown !== undefined) {
  console.error(`There are no tests named ${unknown}; choose from ${PROJECTS.join(', ')}.`)
  process.exit(2)
}
const projects = asked.length === 0 ? PROJECTS : PROJECTS.filter((name) => asked.includes(name))
const startedAt = Date.now()
const failedParts = []
const part = async (name, work) => {
  if (!(await runPart(name, work))) failedParts.push(name)
}

await ensureInstalled()
await part('database client', () => ensureClient().then(() => true))
const isWhole = asked.length === 0
const isServed = projects.includes('server') || projects.includes('browser')
const partWhere = async (isAsked, name, work) => {
  if (isAsked) await part(name, work)
}
// Each of these keeps one processor busy at most.
await Promise.all([
  partWhere(isWhole, 'types', checkTypesOfPackages).then(() =>
    partWhere(isServed, 'programs', () => ensurePrograms().then(() => true)),
  ),
  partWhere(isWhole, 'format and lint', checkFormatAndLint).then(() =>
    partWhere(isServed, 'dashboard', () => ensureDashboard().then(() => true)),
  ),
])
await partWhere(isWhole, 'types of the dashboard', checkTypesOfDashboard)
const report = join(root, 'tests/.output/tests.json')
// All of them in one run: at the end of each, a processor would stand idle for what still runs on the other.
await part(`${projects.join(', ')} tests`, runTests)
const { projects: counted, failures, files } = reported()
for (const { file, seconds } of files.slice(0, 8)) console.log(`${seconds} s: ${file}`)
// Last of all, where whoever sees no more than the end of a long log finds it.
for (const failure of failures) console.log(`\n${failure}`)
if (failedParts.length > 0) console.log(`\nFailed: ${failedParts.join(', ')}`)
console.log(`\nAll parts took ${Math.round((Date.now() - startedAt) / 1000)} s`)
const sumOf = (name) => Object.values(counted).reduce((sum, project) => sum + project[name], 0)
console.log(`${sumOf('passed')} passed, ${sumOf('failed')} failed`)
process.exit(failedParts.length === 0 ? 0 : 1)

/** True when every project had tests, and each of them ran and passed. */
async function runTests() {
  rmSync(report, { force: true })
  process.env[REPORT_VARIABLE] = report
  const reporters = ['--reporter=default', `--reporter=${join(root, 'tests/support/test-report.mjs')}`]
  const chosen = projects.map((name) => `--project=${name}`)
  // What was transformed for one project serves the next, within this run alone: nothing stale is ever read.
  rmSync(join(root, 'node_modules/.experimental-vitest-cache'), { recursive: true, force: true })
  const list = ['run', ...chosen, ...reporters, '--experimental.fsModuleCache']
  const endedWell = await runTool('vitest/vitest.mjs', list)
  const { projects: counted } = reported()
  for (const name of projects) console.log(`${name}: ${toldOf(counted[name])}`)
  return endedWell && projects.every((name) => isGood(counted[name]))
}

// A skipped test fails the run: nobody should have to notice it later.
function isGood(project) {
  return project !== undefined && project.passed > 0 && project.failed + project.skipped === 0
}

function toldOf(project) {
  if (project === undefined) return 'no tests'
  return `${project.passed} passed, ${project.failed} failed, ${project.skipped} skipped`
}

/** A run that leaves no report counts as one failure. */
function reported() {
  if (!existsSync(report)) return { projects: { none: { passed: 0, failed: 1, skipped: 0 } }, failures: [], files: [] }
  return JSON.parse(readFileSync(report, 'utf8'))
}
