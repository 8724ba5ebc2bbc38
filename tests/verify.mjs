// npm run verify: what can be checked in seconds and without a database.
import { ensureInstalled } from '../apps/standalone/build/project.mjs'
import { ensureClient } from '../apps/standalone/build/steps.mjs'
import { findMissingPaths } from './support/documented-paths.mjs'
import { findAllCircles } from './support/import-circles.mjs'
import { checkFormatAndLint, checkTypes, runPart, runTool } from './support/steps.mjs'

await ensureInstalled()
await ensureClient()
const results = [
  await runPart('format and lint', checkFormatAndLint),
  await runPart('types', checkTypes),
  await runPart('dead exports and unused packages', () => runTool('knip/bin/knip.js', ['--no-progress'])),
  await runPart('circles between files and folders', () => sayAll(findAllCircles())),
  await runPart('documented paths', () => sayAll(findMissingPaths())),
]
process.exit(results.every(Boolean) ? 0 : 1)

/** Good when there is nothing to say. */
function sayAll(sentences) {
  for (const sentence of sentences) console.log(sentence)
  return sentences.length === 0
}
