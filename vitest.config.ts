import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'
import { LongestFirst } from './tests/support/longest-first.ts'

// Tests read the sources, never a stale build; `@/` is as the dashboard's own tsconfig.json has it. One and the same for every
// project, so that what one of them had transformed serves the others too.
const alias = { '@/': new URL('./apps/web/src/', import.meta.url).pathname }
const resolve = { conditions: ['source'], alias }
const ssr = { resolve: { conditions: ['source'] } }
// Global set-ups run in an environment of their own.
const environments = { __vitest__: { resolve: { conditions: ['source'] } } }

// Vitest leaves one processor to itself, which on two is half of the machine; a test of pages or of processes waits half of its time.
const maxWorkers = availableParallelism() + 1

const setupFiles = ['tests/support/property-seed.ts']

// Files of a worker share its modules: most of a small file's time went into loading the house anew. So a module keeps
// nothing but by ids that are one test's own, and what a test changes of the process is put back before the next.
const isolate = false
const putBack = { unstubGlobals: true, restoreMocks: true }

// What is waited for comes at once, and a test takes seconds: only what hangs runs into these, on however busy a machine.
const expect = { poll: { timeout: 60_000 } }
const longest = { testTimeout: 300_000, hookTimeout: 300_000 }
const longestOfPages = { testTimeout: 600_000, hookTimeout: 600_000 }

export default defineConfig({
  test: {
    maxWorkers,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        resolve,
        ssr,
        test: {
          name: 'pure',
          ...{ isolate, ...putBack, expect },
          setupFiles,
          include: [
            'shared/src/**/*.test.ts',
            'apps/web/src/**/*.test.ts',
            'packages/{seawater,survival,lineage,live-feed,planner,husbandry,words,readings,notify,room}/src/**/*.test.ts',
            'tests/reference/**/*.test.ts',
            'tests/repository/**/*.test.ts',
          ],
          ...longest,
        },
      },
      {
        resolve,
        test: {
          name: 'dom',
          ...{ isolate, ...putBack, expect },
          include: ['apps/web/src/**/*.test.tsx'],
          environment: 'happy-dom',
          setupFiles: ['apps/web/src/testing/dom-setup.ts'],
          ...longest,
        },
      },
      {
        resolve,
        ssr,
        environments,
        test: {
          name: 'server',
          ...{ isolate, ...putBack, expect },
          setupFiles: [...setupFiles, 'tests/support/jitter.ts'],
          include: [
            'tests/{store,room,api,scheduler,standalone,faults,scenarios,live}/**/*.test.ts',
            'apps/{api,scheduler,standalone}/src/**/*.test.ts',
          ],
          globalSetup: ['tests/support/global-setup.ts'],
          ...longest,
        },
      },
      {
        resolve,
        ssr,
        environments,
        test: {
          name: 'browser',
          ...{ isolate, ...putBack, expect },
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/global-setup.ts', 'tests/support/browser-setup.ts'],
          ...longestOfPages,
        },
      },
    ],
  },
})
