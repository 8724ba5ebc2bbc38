// npm test: everything, from a fresh clone. `npm test -- server` runs one project's tests only (pure, dom, server, browser).
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { ensureInstalled, root } from '../apps/standalone/build/project.mjs'
import { ensureClient, ensureDashboard, ensurePrograms } from '../apps/standalone/build/steps.mjs'
import { checkFormatAndLint, checkTypes, runPart, runTool } from './support/steps.mjs'

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
if (asked.length === 0) {
  await part('types', checkTypes)
  await part('format and lint', checkFormatAndLint)
}
if (projects.includes('server') || projects.includes('browser')) {
  await part('programs', () => ensurePrograms().then(() => true))
  await part('dashboard', () => ensureDashboard().then(() => true))
}
const total = { passed: 0, failed: 0 }
const failures = []
for (const project of projects) {
  await part(`${project} tests`, async () => {
    const counted = await runProject(project)
    total.passed += counted.passed
    total.failed += counted.failed
    return counted.isGood
  })
}
// Last of all, where whoever sees no more than the end of a long log finds it.
for (const failure of failures) console.log(`\n${failure}`)
if (failedParts.length > 0) console.log(`\nFailed: ${failedParts.join(', ')}`)
console.log(`\nAll parts took ${Math.round((Date.now() - startedAt) / 1000)} s`)
console.log(`${total.passed} passed, ${total.failed} failed`)
process.exit(failedParts.length === 0 ? 0 : 1)

/** A file that does not load, or a run that leaves no report, counts as one failure; a skipped test fails the part. */
async function runProject(project) {
  const folder = join(root, 'tests/.output')
  const report = join(folder, `${project}.json`)
  mkdirSync(folder, { recursive: true })
  rmSync(report, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
  const endedWell = await runTool('vitest/vitest.mjs', ['run', '--project', project, ...reporters])
  if (!existsSync(report)) return { passed: 0, failed: 1, isGood: false }
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
    readFileSync(report, 'utf8'),
  )
  const unloaded = testResults.filter((file) => file.status === 'failed' && !hasFailedTest(file)).length
  failures.push(...testResults.flatMap(whatFailed))
  const skipped = numPendingTests + numTodoTests
  if (skipped > 0)
    console.log(`${skipped} of the ${project} tests were skipped, which nobody should have to notice later`)
  const failed = numFailedTests + unloaded
  return { passed: numPassedTests, failed, isGood: endedWell && failed === 0 && skipped === 0 && numPassedTests > 0 }
}

function whatFailed(file) {
  if (file.status === 'failed' && !hasFailedTest(file)) return [`${file.name}\n${file.message}`]
  return file.assertionResults
    .filter((test) => test.status === 'failed')
    .map((test) => `${file.name}: ${test.fullName}\n${test.failureMessages.join('\n')}`)
}

function hasFailedTest(file) {
  return file.assertionResults.some((test) => test.status === 'failed')
}
