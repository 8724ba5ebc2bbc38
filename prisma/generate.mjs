// Generates the Prisma client. The generator is WebAssembly and never calls the native schema engine that the CLI would
// otherwise download, so any existing file satisfies the CLI's check.
import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const cli = join(dirname(createRequire(import.meta.url).resolve('prisma/package.json')), 'build/index.js')
const run = spawnSync(process.execPath, [cli, 'generate', '--schema', join(root, 'prisma/schema.prisma')], {
  cwd: root,
  env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
  encoding: 'utf8',
})
if (run.status !== 0) {
  process.stderr.write(
    `${run.stdout}\n${run.stderr}\nThe Prisma client could not be generated; the lines above say why.\n`,
  )
  process.exit(run.status ?? 1)
}
