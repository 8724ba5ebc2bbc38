import { spawnSync } from 'node:child_process'
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { findAllCircles, findCirclesIn, readImports } from '../support/import-circles.mjs'
import { root } from '../support/project-root.ts'

const scratch = mkdtempSync(join(tmpdir(), 'fryward-floors-'))
afterAll(() => rmSync(scratch, { recursive: true, force: true }))

/** A room of the house made up of these files. */
function roomOf(name: string, files: Record<string, string>): string {
  const folder = join(scratch, name)
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  return folder
}

describe('the house', () => {
  it('has no circle, between files or between folders', () => {
    expect(findAllCircles()).toEqual([])
  })

  it('is read as it is: the shell of a room reaches its queries', () => {
    const imports = readImports(join(root, 'apps/web/src'))
    expect([...(imports.get('parts/shell/RoomShell.tsx') ?? [])]).toContain('parts/rooms/queries.ts')
    expect([...(imports.get('parts/task-sheet/TaskSheetPlace.tsx') ?? [])]).toContain('parts/task-sheet/TaskSheet.tsx')
  })
})

describe('a circle', () => {
  it('is found between folders whose files make none', () => {
    const folder = roomOf('folders', {
      'parts/a/one.ts': "import { two } from '@/parts/b/two.ts'",
      'parts/a/three.ts': 'export const three = 3',
      'parts/b/two.ts': "export { three } from '../a/three.ts'",
    })
    expect(findCirclesIn('room', folder)).toEqual(['room: folders in a circle: parts/a -> parts/b -> parts/a'])
  })

  it('is found between files, over types and scripts that come later', () => {
    const folder = roomOf('files', {
      'a/one.ts': "import type { Two } from './two.ts'",
      'a/two.ts': "export const load = () => import('./three.ts')",
      'a/three.ts': "import './one.ts'",
    })
    expect(findCirclesIn('room', folder)).toEqual([
      'room: files in a circle: a/one.ts -> a/two.ts -> a/three.ts -> a/one.ts',
    ])
  })

  it('is none where a door at the root leads to folders that share a word at the root', () => {
    const folder = roomOf('door', {
      'index.ts': "export * from './a/one.ts'",
      'a/one.ts': "import { word } from '../word.ts'",
      'word.ts': 'export const word = 1',
    })
    expect(findCirclesIn('room', folder)).toEqual([])
  })
})

describe('a floor of the dashboard', () => {
  const refused = [
    ['screens/tank', '@/screens/pair/PairPage.tsx', 'No page imports another'],
    ['screens/tank', '@/app/providers.tsx', 'No page imports another'],
    ['parts/tasks', '@/screens/today/TodayPage.tsx', 'A part knows no page'],
    ['base/ui', '@/parts/tasks/queries.ts', 'The base knows no part'],
    ['base/ui', '@/screens/today/TodayPage.tsx', 'The base knows no part'],
    ['parts/tasks', '../rooms/queries.ts', 'by the alias'],
    ['parts/tasks', '@fryward/husbandry', 'knows the wire contract'],
  ] as const
  const allowed = [
    ['app/claim', '@/screens/claim/ClaimPage.tsx'],
    ['screens/tank', './Inhabitants.tsx'],
    ['screens/tank', '@/parts/tanks/queries.ts'],
    ['parts/tasks', '@/parts/rooms/queries.ts'],
    ['base/ui', '@/base/api/problem.ts'],
    ['parts/tasks', '@fryward/shared'],
  ] as const
  const fileOf = (floor: string, imported: string) => `apps/web/src/${floor}/${imported.replaceAll(/\W/g, '-')}.ts`

  /** What our linter says to files that import these, one line a complaint. */
  function lint(): string[] {
    const folder = roomOf(
      'linted',
      Object.fromEntries(
        [...refused, ...allowed].map(([floor, imported]) => [
          fileOf(floor, imported),
          `export { one } from '${imported}'\n`,
        ]),
      ),
    )
    copyFileSync(join(root, 'biome.json'), join(folder, 'biome.json'))
    // The linter reads nothing at all where a plugin that its settings name is missing.
    cpSync(join(root, 'tests/lint'), join(folder, 'tests/lint'), { recursive: true })
    const biome = join(root, 'node_modules/@biomejs/biome/bin/biome')
    const given = ['lint', '--vcs-enabled=false', '--reporter=github', '.']
    return spawnSync(process.execPath, [biome, ...given], { cwd: folder, encoding: 'utf8' }).stdout.split('\n')
  }
  const said = lint()
  const saidTo = (floor: string, imported: string) =>
    said.filter((line) => line.includes(fileOf(floor, imported))).join('\n')

  it.each(refused)('refuses %s the import of %s', (floor, imported, sentence) => {
    expect(saidTo(floor, imported)).toContain(sentence)
  })

  it.each(allowed)('lets %s import %s', (floor, imported) => {
    expect(saidTo(floor, imported)).toBe('')
  })
})
