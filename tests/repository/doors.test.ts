import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../support/project-root.ts'

// Their doors are for strangers too (README.md, What it computes), so knip lets pass what no other part of ours takes.
const packages = ['seawater', 'live-feed', 'planner', 'survival', 'lineage']

const filesUnder = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path) && !/node_modules|dist|\.next|\.output|generated/.test(path))
    .map((path) => join(root, folder, path))

const all = ['packages', 'shared/src', 'apps', 'tests', 'prisma'].flatMap(filesUnder)

describe.each(packages)('the door of %s', (name) => {
  it('leads to nothing that neither another part uses nor a test tries', async () => {
    const own = join(root, 'packages', name, '/')
    const others = all.filter((path) => !path.startsWith(own) || path.endsWith('.test.ts'))
    const text = others.map((path) => readFileSync(path, 'utf8')).join('\n')
    const exported = Object.keys(await import(`../../packages/${name}/src/index.ts`))
    expect(exported.length).toBeGreaterThan(0)
    expect(exported.filter((word) => !new RegExp(`\\b${word}\\b`).test(text))).toEqual([])
  })
})
