// What is built, from what, into what. Plain JavaScript, no packages.
import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { ensureBuilt, root, runStep } from './project.mjs'

/** The programs that a start forks, each packed into a few files; what starts them is none of them. */
export const packed = ['apps/api', 'apps/scheduler']
const PROGRAMS = [...packed, 'apps/standalone']
const packages = readdirSync(join(root, 'packages')).map((name) => `packages/${name}`)

/** The TypeScript projects that a start compiles; a package that no program uses yet is one of them, for the benches read it. */
export const compiled = ['shared', ...packages, ...PROGRAMS]

/** The file whose presence says that a project was compiled. */
export const madeBy = (project) => `${project}/dist/${PROGRAMS.includes(project) ? 'main' : 'index'}.js`

/** The Prisma client, when the schema changed. */
export const ensureClient = (log = console.log) =>
  ensureBuilt({
    name: 'client',
    inputs: ['prisma/schema.prisma', 'prisma/generate.mjs', 'package-lock.json'],
    outputs: ['packages/store/src/generated/client.ts'],
    build: () => {
      log('Generating the database client')
      return node('The database client', ['prisma/generate.mjs'])
    },
  })

/** The programs and the packages they use, when a source changed. */
export const ensurePrograms = (log = console.log) =>
  ensureBuilt({
    name: 'programs',
    inputs: [
      ...compiled.flatMap((path) => [`${path}/src`, `${path}/package.json`, `${path}/tsconfig.json`]),
      ...['tsconfig.json', 'prisma/schema.prisma', 'package-lock.json', 'apps/standalone/build/pack.mjs'],
    ],
    outputs: [...compiled.map(madeBy), ...packed.map((program) => `${program}/packed/main.js`)],
    build: async () => {
      log('Compiling')
      await node('The compiler', ['node_modules/typescript/bin/tsc', '-b', ...compiled])
      await node('The packer', ['apps/standalone/build/pack.mjs'])
    },
  })

/** The dashboard, when a page or a package of ours that it uses changed. */
export const ensureDashboard = (log = console.log) =>
  ensureBuilt({
    name: 'dashboard',
    inputs: ['apps/web', ...sourcesUsedBy('apps/web'), 'package-lock.json'],
    outputs: ['apps/web/.next/BUILD_ID'],
    build: () => {
      log('Building the dashboard')
      return node('The dashboard', ['node_modules/next/dist/bin/next', 'build', 'apps/web'])
    },
  })

/** Sources of the parts of ours that a part is built from, theirs included. */
export function sourcesUsedBy(part) {
  const { dependencies = {} } = JSON.parse(readFileSync(join(root, part, 'package.json'), 'utf8'))
  const used = compiled.filter((path) => `@fryward/${basename(path)}` in dependencies)
  return [...new Set(used.flatMap((path) => [`${path}/src`, ...sourcesUsedBy(path)]))]
}

function node(name, list) {
  const environment = { NEXT_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' }
  return runStep(name, { program: process.execPath, list, environment })
}
