/** `npm run bench <name>` runs tests/load/<name>.bench.mjs, which exports `run(arguments)`, in a fresh clone too. */
import { readdir } from 'node:fs/promises'
import { ensureInstalled } from '../../apps/standalone/build/project.mjs'
import { ensureClient, ensurePrograms } from '../../apps/standalone/build/steps.mjs'

const SUFFIX = '.bench.mjs'

const names = (await readdir(import.meta.dirname))
  .filter((file) => file.endsWith(SUFFIX))
  .map((file) => file.slice(0, -SUFFIX.length))
  .sort()
const [name, ...rest] = process.argv.slice(2)

if (name === undefined || !names.includes(name)) {
  const wanted = name === undefined ? 'no bench named' : `no bench named "${name}"`
  console.error(`${wanted}; there are: ${names.join(', ')}`)
  process.exitCode = 2
} else {
  // A bench imports what is compiled, so that it can be read only after this.
  for (const ensure of [ensureInstalled, ensureClient, ensurePrograms]) await ensure()
  const { run } = await import(`./${name}${SUFFIX}`)
  await run(rest)
}
