import { accessSync, constants, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { findNodeProblem } from '../../apps/standalone/build/project.mjs'
import { findMissingPaths } from '../support/documented-paths.mjs'
import { root } from '../support/project-root.ts'

const PackageSchema = z.object({ engines: z.object({ node: z.string() }), scripts: z.record(z.string(), z.string()) })
const { engines, scripts } = PackageSchema.parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')))

describe('the scripts of package.json', () => {
  it.each(Object.entries(scripts))('%s runs what exists', (_name, command) => {
    for (const [, path = ''] of command.matchAll(/\bnode (\S+\.mjs)/g))
      expect(existsSync(join(root, path)), path).toBe(true)
    for (const [, name = ''] of command.matchAll(/npm run (\S+)/g)) {
      const workspace = command.match(new RegExp(`npm run ${name} -w (\\S+)`))?.[1] ?? '.'
      const held = PackageSchema.partial().parse(
        JSON.parse(readFileSync(join(root, workspace, 'package.json'), 'utf8')),
      )
      expect(Object.keys(held.scripts ?? {})).toContain(name)
    }
  })

  it('run the same tests in the checks as by hand', () => {
    accessSync(join(root, '.ci/run'), constants.X_OK)
    expect(readFileSync(join(root, '.ci/run'), 'utf8')).toContain('exec npm test')
  })
})

describe('the start', () => {
  it('refuses a Node that package.json excludes, and no other', () => {
    expect(engines.node).toBe('>=20.19')
    for (const good of ['20.19.0', '20.20.2', '22.0.0', '24.21.0']) expect(findNodeProblem(good)).toBeUndefined()
    for (const old of ['18.20.4', '20.18.9', '19.9.0'])
      expect(findNodeProblem(old)).toContain('Fryward needs Node 20.19')
  })
})

describe('the documents', () => {
  it('name no path that does not exist', () => {
    expect(findMissingPaths()).toEqual([])
  })

  it('are caught when they do', () => {
    const folder = mkdtempSync(join(tmpdir(), 'fryward-documents-'))
    writeFileSync(join(folder, 'README.md'), 'See `packages/nowhere/src`, `npm start` and `README.md`.\n')
    expect(findMissingPaths(folder)).toEqual(['README.md:1 names packages/nowhere/src, which does not exist'])
    rmSync(folder, { recursive: true })
  })
})
