// One file, more or less, of each server program with all that it loads: reading some 3,000 small ones took most of a start.
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { rolldown } from 'rolldown'
import { root } from './project.mjs'
import { packed } from './steps.mjs'

// The threads that a program starts lie beside it, where it looks for them.
const threads = {
  'food-worker': 'packages/room/src/food/food-worker.ts',
  'keeping-worker': 'packages/readings/src/keeper/keeping-worker.ts',
}
// Native code, and what is loaded only where somebody has installed it.
const external = ['sharp', 'pg-native', 'pino-pretty']

for (const program of packed) {
  const dir = join(root, program, 'packed')
  rmSync(dir, { recursive: true, force: true })
  const bundle = await rolldown({
    cwd: root,
    input: { main: `${program}/src/main.ts`, ...threads },
    platform: 'node',
    resolve: { conditionNames: ['source', 'node'] },
    external,
    // What the packages of others have to be told about is theirs to put right.
    onLog: (level, log, tell) => (log.id?.includes('node_modules') ? undefined : tell(level, log)),
  })
  // Named as in the sources and on lines of their own, with the path of each beside it: a stack trace stays readable
  // without maps, which take Node longer to read than all the rest.
  await bundle.write({ dir, format: 'esm', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' })
  await bundle.close()
}
