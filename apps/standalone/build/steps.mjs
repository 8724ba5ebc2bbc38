// What is built, from what, into what. Plain JavaScript, no packages.
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBuilt, root, runStep } from './project.mjs'

const PROGRAMS = ['apps/api', 'apps/scheduler', 'apps/standalone']
const packages = readdirSync(join(root, 'packages')).map((name) => `packages/${name}`)

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
      ...['shared', ...packages, ...PROGRAMS].flatMap((path) => [
        `${path}/src`,
        `${path}/package.json`,
        `${path}/tsconfig.json`,
      ]),
      ...['tsconfig.json', 'prisma/schema.prisma', 'package-lock.json'],
    ],
    outputs: ['shared', ...packages]
      .map((path) => `${path}/dist/index.js`)
      .concat(PROGRAMS.map((path) => `${path}/dist/main.js`)),
    build: () => {
      log('Compiling')
      return node('The compiler', ['node_modules/typescript/bin/tsc', '-b', ...PROGRAMS])
    },
  })

/** The dashboard, when a page or the wire contract changed. */
export const ensureDashboard = (log = console.log) =>
  ensureBuilt({
    name: 'dashboard',
    inputs: ['apps/web', 'shared/src', 'packages/seawater/src', 'package-lock.json'],
    outputs: ['apps/web/.next/BUILD_ID'],
    build: () => {
      log('Building the dashboard')
      return node('The dashboard', ['node_modules/next/dist/bin/next', 'build', 'apps/web'])
    },
  })

function node(name, list) {
  const environment = { NEXT_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' }
  return runStep(name, { program: process.execPath, list, environment })
}
