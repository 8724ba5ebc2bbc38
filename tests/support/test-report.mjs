// A reporter for `npm test`: what each project's tests came to, in one file. Plain JavaScript: vitest loads it by its path.
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/** Names the file that the report is left in. */
export const REPORT_VARIABLE = 'TEST_REPORT'

export default class TestReport {
  onTestRunEnd(modules, unhandledErrors) {
    const names = [...new Set(modules.map(nameOfProject))]
    const of = (name) => modules.filter((module) => nameOfProject(module) === name)
    const report = {
      projects: Object.fromEntries(names.map((name) => [name, counted(of(name))])),
      failures: [...modules.flatMap(failuresOf), ...unhandledErrors.map(textOf)],
      files: modules.map(timed).sort((a, b) => b.seconds - a.seconds),
    }
    const path = process.env[REPORT_VARIABLE]
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, JSON.stringify(report, null, 2))
  }
}

const nameOfProject = (module) => module.project.name

/** A file that does not load, or a group whose set-up fails, counts as one failure. */
function counted(modules) {
  const states = modules.flatMap((module) => [...module.children.allTests()].map((test) => test.result().state))
  const count = (wanted) => states.filter((state) => state === wanted).length
  const broken = modules
    .flatMap((module) => [module, ...module.children.allSuites()])
    .filter((part) => part.errors().length > 0)
  const skipped = states.length - count('passed') - count('failed')
  return { passed: count('passed'), failed: count('failed') + broken.length, skipped }
}

function failuresOf(module) {
  const parts = [module, ...module.children.allSuites()].map((part) => [part.fullName ?? '', part.errors()])
  const tests = [...module.children.allTests()].map((test) => [test.fullName, test.result().errors ?? []])
  return [...parts, ...tests]
    .filter(([, errors]) => errors.length > 0)
    .map(([name, errors]) => `${module.relativeModuleId}: ${name}\n${errors.map(textOf).join('\n')}`)
}

const textOf = (error) => [error.stack ?? error.message, error.diff].filter(Boolean).join('\n')

const timed = (module) => ({ file: module.relativeModuleId, seconds: Math.round(module.diagnostic().duration / 1000) })
