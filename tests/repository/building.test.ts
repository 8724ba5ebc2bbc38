import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'
import { compiled, sourcesUsedBy } from '../../apps/standalone/build/steps.mjs'
import { root } from '../support/project-root.ts'

/** The projects that the compiler would go through, asked of the compiler itself. */
function projectsReached(list: string[]): string[] {
  const tsc = join(root, 'node_modules/typescript/bin/tsc')
  const told = execFileSync(process.execPath, [tsc, '-b', '--dry', '--force', ...list], { cwd: root, encoding: 'utf8' })
  return [...told.matchAll(/build project '(.+)\/tsconfig\.json'/g)].map(([, path = '']) => relative(root, path))
}

describe('a start', () => {
  it('compiles every project whose output it looks for, so that the next one has nothing to do', () => {
    expect(projectsReached(compiled).sort()).toEqual([...compiled].sort())
  })

  it('compiles every project that the types are checked in, tests apart', () => {
    expect(
      projectsReached(['.'])
        .filter((path) => path !== '' && path !== 'tests')
        .sort(),
    ).toEqual([...compiled].sort())
  })

  it('builds the dashboard anew when a package of ours changes that it uses', () => {
    const sources = sourcesUsedBy('apps/web')
    expect(sources).toContain('shared/src')
    expect(sources).toContain('packages/seawater/src')
    for (const path of sources) expect(existsSync(join(root, path)), path).toBe(true)
    expect(sourcesUsedBy('packages/room')).toContain('packages/survival/src')
  })
})
