// npm run verify: what can be checked in seconds and without a database.
import { ensureInstalled } from '../apps/standalone/build/project.mjs'
import { ensureClient } from '../apps/standalone/build/steps.mjs'
import { findMissingPaths } from './support/documented-paths.mjs'
import { checkFormatAndLint, checkTypes, runPart, runTool } from './support/steps.mjs'

await ensureInstalled()
await ensureClient()
const results = [
  await runPart('format and lint', checkFormatAndLint),
  await runPart('types', checkTypes),
  await runPart('dead exports and unused packages', () => runTool('knip/bin/knip.js', ['--no-progress'])),
  await runPart('documented paths', () => {
    const missing = findMissingPaths()
    for (const line of missing) console.log(line)
    return missing.length === 0
  }),
]
process.exit(results.every(Boolean) ? 0 : 1)
