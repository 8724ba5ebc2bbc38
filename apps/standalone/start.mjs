// npm start: from a fresh clone to a running server, with nothing but Node and npm. Plain JavaScript, no packages.
import { ensureInstalled, findNodeProblem, root, StepFailed } from './build/project.mjs'
import { ensureClient, ensureDashboard, ensurePrograms } from './build/steps.mjs'
import { watchSources } from './build/watch-sources.mjs'

const words = process.argv.slice(2)
const unknown = words.find((word) => word !== '--dev')
if (unknown !== undefined) {
  console.error(`npm start takes no ${unknown}. Settings stand in .env, and .env.example says which there are.`)
  process.exit(2)
}
const isDevelopment = words.includes('--dev')
const problem = findNodeProblem()
if (problem !== undefined) {
  console.error(problem)
  process.exit(1)
}
try {
  await ensureInstalled()
  await ensureClient()
  await ensurePrograms()
  if (!isDevelopment) await ensureDashboard()
} catch (thrown) {
  if (!(thrown instanceof StepFailed)) throw thrown
  console.error(thrown.message)
  process.exit(1)
}
const stopWatching = isDevelopment ? watchSources(root) : () => {}
const { main } = await import('./dist/main.js')
const exitCode = await main({ root, isDevelopment })
stopWatching()
process.exit(exitCode)
