// npm run backup, restore and reset-password: installs and builds what is missing, then hands over. Plain JavaScript.
import { ensureInstalled, findNodeProblem, root, StepFailed } from './build/project.mjs'
import { ensureClient, ensurePrograms } from './build/steps.mjs'

const problem = findNodeProblem()
if (problem !== undefined) {
  console.error(problem)
  process.exit(1)
}
try {
  await ensureInstalled()
  await ensureClient()
  await ensurePrograms()
} catch (thrown) {
  if (!(thrown instanceof StepFailed)) throw thrown
  console.error(thrown.message)
  process.exit(1)
}
const { runCommand } = await import('./dist/command.js')
// npm runs scripts in the project's folder; a file is named from where the person stands.
process.exit(await runCommand({ root, words: process.argv.slice(2), folder: process.env.INIT_CWD ?? process.cwd() }))
