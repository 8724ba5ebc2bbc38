import { readdirSync, statSync } from 'node:fs'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { LoadErrors } from './load-errors.ts'

const root = new URL('../../', import.meta.url).pathname
const condition = ['source']

// The changed sources lie in a copy of the project, whose packages would else be read from where npm linked them to.
const packages = readdirSync(`${root}packages`).map((name) => [
  `@fryward/${name}`,
  `${root}packages/${name}/src/index.ts`,
])
const alias = {
  ...Object.fromEntries([...packages, ['@fryward/shared', `${root}shared/src/index.ts`]]),
  'fast-check': `${root}tests/mutants/fewer-cases.ts`,
}

// A package is held by its own tests and the published numbers; that others would stumble over it is too late, and too slow.
const those = process.env.MUTANTS_PACKAGES ?? '*'
const referenceOf = (names: string) => names.replace('husbandry', '{rules,thermal}')
const under = process.env.MUTANTS_TESTS_UNDER?.split(',').map((folder) => `${folder}/**/*.test.ts`)
const withDatabase = { globalSetup: ['tests/support/global-setup.ts'], hookTimeout: 120_000 }
const kinds = {
  pure: {
    include: under ?? [`packages/${those}/src/**/*.test.ts`, `tests/reference/${referenceOf(those)}.test.ts`],
    // Long histories take a minute for what other tests of their package notice in a second.
    exclude: ['packages/store/**', '**/{simulated-room-*,survival-figures,culture-recovery,thinning}.test.ts'],
  },
  server: {
    include: ['tests/api/{idempotency,permissions,roles,facts,other-sites,events}.test.ts'],
    ...withDatabase,
  },
  frame: {
    include: ['tests/room/write-frame.test.ts', 'packages/room/src/frame/*.test.ts'],
    ...withDatabase,
  },
}
const asked = process.env.MUTANTS_TESTS
const kind = asked === 'server' || asked === 'frame' ? asked : 'pure'

/** Small files first, and last those with made-up cases: the first test that fails ends a try. */
class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]) {
    const weight = ({ moduleId }: TestSpecification) =>
      statSync(moduleId).size * (moduleId.includes('.property.') ? 1000 : 1)
    return [...files].sort((a, b) => weight(a) - weight(b))
  }
}

export default defineConfig({
  root,
  resolve: { conditions: condition, alias },
  ssr: { resolve: { conditions: condition } },
  environments: { __vitest__: { resolve: { conditions: condition } } },
  test: {
    name: kind,
    testTimeout: 60_000,
    reporters: [new LoadErrors()],
    setupFiles: ['tests/support/property-seed.ts'],
    sequence: { sequencer: QuickFirst },
    // Files of one try share its modules; the next try loads them anew.
    isolate: false,
    unstubGlobals: true,
    restoreMocks: true,
    ...kinds[kind],
  },
})
